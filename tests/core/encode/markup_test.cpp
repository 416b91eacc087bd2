#include "core/encode/markup.h"

#include <doctest/doctest.h>

TEST_CASE("text cannot break out of markup") {
  CHECK(widegate::escape("<b a=\"1\" c='2'>&") == "&lt;b a=&quot;1&quot; c=&#39;2&#39;&gt;&amp;");
  widegate::Markup html;
  html.element("p", "</p><script>", {{"title", "\"><x y='"}});
  CHECK(html.take() == "<p title=\"&quot;&gt;&lt;x y=&#39;\">&lt;/p&gt;&lt;script&gt;</p>");
}

TEST_CASE("elements close from the inside out") {
  widegate::Markup html;
  html.open("table");
  html.open("tr", {{"class", "a"}});
  html.element("td", "1");
  html.close();
  html.empty("hr");
  html.close();
  CHECK(html.take() == "<table><tr class=\"a\"><td>1</td></tr><hr/></table>");
}

TEST_CASE("numbers in attributes are short") {
  widegate::Markup svg;
  svg.empty("rect", {{"x", 1.5}, {"y", -0.0000001}, {"width", 20.0}, {"height", 1.0 / 3}});
  CHECK(svg.take() == "<rect x=\"1.5\" y=\"0\" width=\"20\" height=\"0.333333\"/>");
}
