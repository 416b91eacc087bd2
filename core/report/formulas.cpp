#include "core/report/formulas.h"

#include <array>

namespace widegate {
namespace {

constexpr std::string_view kChosen = "chosen in the plan";
constexpr std::string_view kLibrary = "the library: maker's published sheet or standard";
constexpr std::string_view kGeometry = "geometry";
constexpr std::string_view kDefinition = "definition";
constexpr std::string_view kCounted = "counted";
constexpr std::string_view kFdl = "ASC FDL 2.0: protection is a share taken inward";
constexpr std::string_view kThinLens = "thin lens equation";
constexpr std::string_view kPractice = "common practice, no source";

constexpr auto kRows = std::to_array<FormulaRow>({
    // Headline
    {"headline.horizontal_fov_deg", "Horizontal field of view", "°",
     "2 · atan({squeeze|mode.squeeze} · {frame width|frame.width_mm} / (2 · {focal "
     "length|see.focal_mm}))",
     kGeometry},
    {"headline.vertical_fov_deg", "Vertical field of view", "°",
     "2 · atan({frame height|frame.height_mm} / (2 · {focal length|see.focal_mm}))", kGeometry},
    {"headline.diagonal_fov_deg", "Diagonal field of view", "°",
     "2 · atan(sqrt(({squeeze|mode.squeeze} · {frame width|frame.width_mm})² + {frame "
     "height|frame.height_mm}²) / (2 · {focal length|see.focal_mm}))",
     kGeometry},
    {"headline.mode_megapixels", "Sensor mode", "MP",
     "{width|mode.width_photosites} · {height|mode.height_photosites} / 1000000", kCounted},
    {"headline.frame_megapixels", "Inside the frame line", "MP",
     "{width|frame.width_photosites} · {height|frame.height_photosites} / 1000000", kCounted},
    {"headline.minutes_per_card", "Minutes per magazine", "min",
     "{magazine|film.magazine_feet} / {feet a minute|film.feet_per_minute}", kDefinition,
     "film.known=true"},
    {"headline.minutes_per_card", "Minutes per magazine", "min", "",
     "not known: nobody said how many frames stand on a foot", "store.no_cards=true"},
    {"headline.minutes_per_card", "Minutes per card", "min",
     "{frames per card|store.frames_per_card} / {sensor rate|run.sensor_rate_fps} / 60",
     kDefinition, "", WithFrameSize::falls},
    {"headline.data_rate_megabits_per_s", "Data rate", "Mbit/s",
     "{bytes per second|store.bytes_per_s} · 8 / 1000000", "decimal prefixes, IEC 80000-13"},

    // Sensor mode
    {"mode.width_photosites", "Mode width", "photosites", "", kLibrary},
    {"mode.height_photosites", "Mode height", "photosites", "", kLibrary},
    {"mode.width_mm", "Mode width", "mm", "", kLibrary},
    {"mode.height_mm", "Mode height", "mm", "", kLibrary},
    {"mode.diagonal_mm", "Mode diagonal", "mm",
     "sqrt({width|mode.width_mm}² + {height|mode.height_mm}²)", kGeometry},
    {"mode.pitch_um", "Photosite pitch", "µm",
     "1000 · {width|mode.width_mm} / {width in photosites|mode.width_photosites}", kDefinition},
    {"mode.squeeze", "Squeeze of the lens", "×", "", "the lens set, or chosen in the plan"},
    {"mode.desqueezed_aspect", "Shape of the mode after de-squeeze", "∶1",
     "{squeeze|mode.squeeze} · {width|mode.width_photosites} / {height|mode.height_photosites}",
     kGeometry},

    // Frame; the same rows serve every frame line
    {"frame.aspect", "Aspect ratio", "∶1", "", kChosen},
    {"frame.protection", "Protection", "", "", kChosen},
    {"frame.protected_width_photosites", "Width of the protected area", "photosites",
     "min({mode width|mode.width_photosites}, {mode height|mode.height_photosites} · "
     "{aspect|frame.aspect} / {squeeze|mode.squeeze})",
     kGeometry},
    {"frame.protected_height_photosites", "Height of the protected area", "photosites",
     "{protected width|frame.protected_width_photosites} · {squeeze|mode.squeeze} / "
     "{aspect|frame.aspect}",
     kGeometry},
    {"frame.protected_left_photosites", "Left edge of the protected area", "photosites",
     "({mode width|mode.width_photosites} − {protected "
     "width|frame.protected_width_photosites}) · {share of the room|frame.left_share}",
     kGeometry},
    {"frame.protected_top_photosites", "Top edge of the protected area", "photosites",
     "({mode height|mode.height_photosites} − {protected "
     "height|frame.protected_height_photosites}) · {share of the room|frame.top_share}",
     kGeometry},
    {"frame.left_share", "Share of the room to the left", "", "", "the anchor chosen in the plan"},
    {"frame.top_share", "Share of the room above", "", "", "the anchor chosen in the plan"},
    {"frame.width_photosites", "Width of the frame line", "photosites",
     "{protected width|frame.protected_width_photosites} · (1 − {protection|frame.protection})",
     kFdl},
    {"frame.height_photosites", "Height of the frame line", "photosites",
     "{protected height|frame.protected_height_photosites} · (1 − {protection|frame.protection})",
     kFdl},
    {"frame.left_photosites", "Left edge of the frame line", "photosites",
     "{left edge of the protected area|frame.protected_left_photosites} + ({protected "
     "width|frame.protected_width_photosites} − {width|frame.width_photosites}) / 2",
     kFdl},
    {"frame.top_photosites", "Top edge of the frame line", "photosites",
     "{top edge of the protected area|frame.protected_top_photosites} + ({protected "
     "height|frame.protected_height_photosites} − {height|frame.height_photosites}) / 2",
     kFdl},
    {"frame.left_pixels", "Left edge in the file", "px",
     "{left|frame.left_photosites} · {recorded width|resolve.recorded_width_pixels} / {mode "
     "width|mode.width_photosites}",
     kGeometry},
    {"frame.top_pixels", "Top edge in the file", "px",
     "{top|frame.top_photosites} · {recorded height|resolve.recorded_height_pixels} / {mode "
     "height|mode.height_photosites}",
     kGeometry},
    {"frame.width_pixels", "Width in the file", "px",
     "{width|frame.width_photosites} · {recorded width|resolve.recorded_width_pixels} / {mode "
     "width|mode.width_photosites}",
     kGeometry},
    {"frame.height_pixels", "Height in the file", "px",
     "{height|frame.height_photosites} · {recorded height|resolve.recorded_height_pixels} / {mode "
     "height|mode.height_photosites}",
     kGeometry},
    {"frame.left_even_pixels", "Left edge to extract", "px", "even_up({left|frame.left_pixels})",
     kPractice},
    {"frame.top_even_pixels", "Top edge to extract", "px", "even_up({top|frame.top_pixels})",
     kPractice},
    {"frame.width_even_pixels", "Width to extract", "px",
     "max(0, even_down({left|frame.left_pixels} + {width|frame.width_pixels}) − {left edge to "
     "extract|frame.left_even_pixels})",
     kPractice},
    {"frame.height_even_pixels", "Height to extract", "px",
     "max(0, even_down({top|frame.top_pixels} + {height|frame.height_pixels}) − {top edge to "
     "extract|frame.top_even_pixels})",
     kPractice},
    {"frame.protected_left_pixels", "Left edge of the protected area in the file", "px",
     "{left|frame.protected_left_photosites} · {recorded width|resolve.recorded_width_pixels} / "
     "{mode width|mode.width_photosites}",
     kGeometry},
    {"frame.protected_top_pixels", "Top edge of the protected area in the file", "px",
     "{top|frame.protected_top_photosites} · {recorded height|resolve.recorded_height_pixels} / "
     "{mode height|mode.height_photosites}",
     kGeometry},
    {"frame.protected_width_pixels", "Width of the protected area in the file", "px",
     "{width|frame.protected_width_photosites} · {recorded width|resolve.recorded_width_pixels} / "
     "{mode width|mode.width_photosites}",
     kGeometry},
    {"frame.protected_height_pixels", "Height of the protected area in the file", "px",
     "{height|frame.protected_height_photosites} · {recorded "
     "height|resolve.recorded_height_pixels} / {mode height|mode.height_photosites}",
     kGeometry},
    {"frame.protected_left_even_pixels", "Left edge of the protected area to extract", "px",
     "even_up({left|frame.protected_left_pixels})", kPractice},
    {"frame.protected_top_even_pixels", "Top edge of the protected area to extract", "px",
     "even_up({top|frame.protected_top_pixels})", kPractice},
    {"frame.protected_width_even_pixels", "Width of the protected area to extract", "px",
     "max(0, even_down({left|frame.protected_left_pixels} + "
     "{width|frame.protected_width_pixels}) − {left edge to "
     "extract|frame.protected_left_even_pixels})",
     kPractice},
    {"frame.protected_height_even_pixels", "Height of the protected area to extract", "px",
     "max(0, even_down({top|frame.protected_top_pixels} + "
     "{height|frame.protected_height_pixels}) − {top edge to "
     "extract|frame.protected_top_even_pixels})",
     kPractice},
    {"frame.width_mm", "Width of the frame line", "mm",
     "{width|frame.width_photosites} · {mode width|mode.width_mm} / {mode "
     "width|mode.width_photosites}",
     kGeometry},
    {"frame.height_mm", "Height of the frame line", "mm",
     "{height|frame.height_photosites} · {mode height|mode.height_mm} / {mode "
     "height|mode.height_photosites}",
     kGeometry},
    {"frame.diagonal_mm", "Diagonal of the frame line", "mm",
     "sqrt({width|frame.width_mm}² + {height|frame.height_mm}²)", kGeometry},
    {"frame.picture_width_pixels", "Width of the line's own raster", "px",
     "min({deliverable width|resolve.deliverable_width_pixels}, {deliverable "
     "height|resolve.deliverable_height_pixels} · {aspect|frame.aspect})",
     kGeometry},
    {"frame.picture_height_pixels", "Height of the line's own raster", "px",
     "{width of its raster|frame.picture_width_pixels} / {aspect|frame.aspect}", kGeometry},
    {"frame.nominal_horizontal_scale", "Enlarged across, after de-squeeze", "×",
     "{width wanted|frame.picture_width_pixels} / ({width in the file|frame.width_pixels} · "
     "{squeeze left in the file|resolve.recorded_squeeze})",
     kDefinition},
    {"frame.nominal_vertical_scale", "Enlarged down the height", "×",
     "{height wanted|frame.picture_height_pixels} / {height in the file|frame.height_pixels}",
     kDefinition},
    {"frame.nominal_scale", "Enlarged for the deliverable", "×",
     "max({across|frame.nominal_horizontal_scale}, {down|frame.nominal_vertical_scale})",
     kDefinition},
    {"frame.push_in_percent", "Push-in before anything is upscaled", "%",
     "max(0, 100 · (1 − {enlarged|frame.nominal_scale}))", kDefinition},
    {"frame.room_protected_percent", "Room inside the protected area", "%",
     "100 · (1 − {width|frame.width_photosites} / {protected "
     "width|frame.protected_width_photosites})",
     kGeometry},
    {"frame.room_horizontal_percent", "Room inside the mode, of its width", "%",
     "100 · (1 − {width|frame.width_photosites} / {mode width|mode.width_photosites})", kGeometry},
    {"frame.room_vertical_percent", "Room inside the mode, of its height", "%",
     "100 · (1 − {height|frame.height_photosites} / {mode height|mode.height_photosites})",
     kGeometry},
    {"frame.room_left_percent", "Room to the left, of the mode's width", "%",
     "100 · {left edge|frame.left_photosites} / {mode width|mode.width_photosites}", kGeometry},
    {"frame.room_right_percent", "Room to the right, of the mode's width", "%",
     "{room across|frame.room_horizontal_percent} − {room to the left|frame.room_left_percent}",
     kGeometry},
    {"frame.room_top_percent", "Room above, of the mode's height", "%",
     "100 · {top edge|frame.top_photosites} / {mode height|mode.height_photosites}", kGeometry},
    {"frame.room_bottom_percent", "Room below, of the mode's height", "%",
     "{room down the mode|frame.room_vertical_percent} − {room above|frame.room_top_percent}",
     kGeometry},
    {"frame.shift_horizontal_percent", "Room to shift sideways", "%",
     "100 · ({mode width|mode.width_photosites} − {width|frame.width_photosites}) / 2 / "
     "{width|frame.width_photosites}",
     kGeometry},
    {"frame.shift_vertical_percent", "Room to shift up and down", "%",
     "100 · ({mode height|mode.height_photosites} − {height|frame.height_photosites}) / 2 / "
     "{height|frame.height_photosites}",
     kGeometry},
    {"frame.room_horizontal_mm", "From the middle of the frame line to the nearer side", "mm",
     "{mode width|mode.width_mm} / 2 − abs({left|frame.left_photosites} + "
     "{width|frame.width_photosites} / 2 − {mode width|mode.width_photosites} / 2) · {mode "
     "width|mode.width_mm} / {mode width|mode.width_photosites}",
     kGeometry},
    {"frame.room_vertical_mm", "From the middle of the frame line to the nearer edge", "mm",
     "{mode height|mode.height_mm} / 2 − abs({top|frame.top_photosites} + "
     "{height|frame.height_photosites} / 2 − {mode height|mode.height_photosites} / 2) · {mode "
     "height|mode.height_mm} / {mode height|mode.height_photosites}",
     kGeometry},
    {"frame.max_rotation_deg", "Room to roll", "°",
     "min(turn({squeeze|mode.squeeze} · {width|frame.width_mm} / 2, {height|frame.height_mm} / 2, "
     "{squeeze|mode.squeeze} · {room sideways|frame.room_horizontal_mm}), "
     "turn({height|frame.height_mm} / 2, {squeeze|mode.squeeze} · {width|frame.width_mm} / 2, "
     "{room up and down|frame.room_vertical_mm}))",
     kGeometry},

    // Cover
    {"cover.image_circle_mm", "Image circle", "mm", "", "the lens set, or chosen in the plan"},
    {"cover.mode.left_mm", "Left edge from the optical axis", "mm",
     "−{mode width|mode.width_mm} / 2", kGeometry},
    {"cover.mode.top_mm", "Top edge from the optical axis", "mm",
     "−{mode height|mode.height_mm} / 2", kGeometry},
    {"cover.mode.right_mm", "Right edge from the optical axis", "mm",
     "{mode width|mode.width_mm} / 2", kGeometry},
    {"cover.mode.bottom_mm", "Bottom edge from the optical axis", "mm",
     "{mode height|mode.height_mm} / 2", kGeometry},
    {"cover.protected.left_mm", "Left edge from the optical axis", "mm",
     "({left|frame.protected_left_photosites} − {mode width|mode.width_photosites} / 2) · {mode "
     "width|mode.width_mm} / {mode width|mode.width_photosites}",
     kGeometry},
    {"cover.protected.top_mm", "Top edge from the optical axis", "mm",
     "({top|frame.protected_top_photosites} − {mode height|mode.height_photosites} / 2) · {mode "
     "height|mode.height_mm} / {mode height|mode.height_photosites}",
     kGeometry},
    {"cover.protected.right_mm", "Right edge from the optical axis", "mm",
     "({left|frame.protected_left_photosites} + {width|frame.protected_width_photosites} − {mode "
     "width|mode.width_photosites} / 2) · {mode width|mode.width_mm} / {mode "
     "width|mode.width_photosites}",
     kGeometry},
    {"cover.protected.bottom_mm", "Bottom edge from the optical axis", "mm",
     "({top|frame.protected_top_photosites} + {height|frame.protected_height_photosites} − {mode "
     "height|mode.height_photosites} / 2) · {mode height|mode.height_mm} / {mode "
     "height|mode.height_photosites}",
     kGeometry},
    {"cover.frame.left_mm", "Left edge from the optical axis", "mm",
     "({left|frame.left_photosites} − {mode width|mode.width_photosites} / 2) · {mode "
     "width|mode.width_mm} / {mode width|mode.width_photosites}",
     kGeometry},
    {"cover.frame.top_mm", "Top edge from the optical axis", "mm",
     "({top|frame.top_photosites} − {mode height|mode.height_photosites} / 2) · {mode "
     "height|mode.height_mm} / {mode height|mode.height_photosites}",
     kGeometry},
    {"cover.frame.right_mm", "Right edge from the optical axis", "mm",
     "({left|frame.left_photosites} + {width|frame.width_photosites} − {mode "
     "width|mode.width_photosites} / 2) · {mode width|mode.width_mm} / {mode "
     "width|mode.width_photosites}",
     kGeometry},
    {"cover.frame.bottom_mm", "Bottom edge from the optical axis", "mm",
     "({top|frame.top_photosites} + {height|frame.height_photosites} − {mode "
     "height|mode.height_photosites} / 2) · {mode height|mode.height_mm} / {mode "
     "height|mode.height_photosites}",
     kGeometry},
    // The mode, the protected area and the frame line share these
    {"cover.area.diagonal_mm", "Circle this area needs", "mm",
     "2 · sqrt(max(abs({left|.left_mm}), abs({right|.right_mm}))² + max(abs({top|.top_mm}), "
     "abs({bottom|.bottom_mm}))²)",
     kGeometry},
    {"cover.area.area_mm2", "Area", "mm²",
     "({right|.right_mm} − {left|.left_mm}) · ({bottom|.bottom_mm} − {top|.top_mm})", kGeometry},
    {"cover.area.overlap_mm2", "Lit area", "mm²",
     "quarter({right|.right_mm}, {bottom|.bottom_mm}, {circle|cover.image_circle_mm} / 2) − "
     "quarter({left|.left_mm}, {bottom|.bottom_mm}, {circle|cover.image_circle_mm} / 2) − "
     "quarter({right|.right_mm}, {top|.top_mm}, {circle|cover.image_circle_mm} / 2) + "
     "quarter({left|.left_mm}, {top|.top_mm}, {circle|cover.image_circle_mm} / 2)",
     "exact overlap of circle and rectangle"},
    {"cover.area.margin_mm", "Spare at the farthest corner", "mm",
     "({circle|cover.image_circle_mm} − {circle it needs|.diagonal_mm}) / 2", kGeometry},
    {"cover.area.uncovered_area_percent", "Dark share of the area", "%",
     "100 · (1 − {lit area|.overlap_mm2} / {area|.area_mm2})", kGeometry},
    {"cover.area.largest_covered_scale", "Largest covered size of this shape", "×",
     "{circle|cover.image_circle_mm} / {circle it needs|.diagonal_mm}", kGeometry},
    {"cover.largest_frame_width_mm", "Width of the largest covered frame", "mm",
     "{width|frame.width_mm} / (1 − {protection|frame.protection}) · min(1, "
     "{circle|cover.image_circle_mm} · (1 − {protection|frame.protection}) / "
     "{diagonal|frame.diagonal_mm})",
     kGeometry},
    {"cover.largest_frame_height_mm", "Height of the largest covered frame", "mm",
     "{height|frame.height_mm} / (1 − {protection|frame.protection}) · min(1, "
     "{circle|cover.image_circle_mm} · (1 − {protection|frame.protection}) / "
     "{diagonal|frame.diagonal_mm})",
     kGeometry},
    {"cover.lost_padding_percent", "Padding that stays dark", "%",
     "if_less({area of the mode|cover.mode.area_mm2} − {area of the frame|cover.frame.area_mm2}, "
     "0.000001, 0, 100 · max(0, ({area of the mode|cover.mode.area_mm2} − {lit area of the "
     "mode|cover.mode.overlap_mm2} − {area of the frame|cover.frame.area_mm2} + {lit area of the "
     "frame|cover.frame.overlap_mm2})) / ({area of the mode|cover.mode.area_mm2} − {area of the "
     "frame|cover.frame.area_mm2}))",
     kGeometry},
    {"cover.lens_set.#.focal_mm", "Focal length", "mm", "", kLibrary},
    {"cover.lens_set.#.image_circle_mm", "Image circle", "mm", "", kLibrary},
    {"cover.longest_uncovering_focal_mm", "Longest focal length that does not cover", "mm", "",
     "the lens set, focal length by focal length"},

    // See
    {"see.marked_focal_mm", "Focal length on the lens", "mm", "", kChosen},
    {"see.marked_f_number", "f-number on the lens", "", "", kChosen},
    {"see.extender", "Factor of the extender or reducer", "×", "", kChosen},
    {"see.focal_mm", "Focal length", "mm",
     "{focal length on the lens|see.marked_focal_mm} · {factor of the extender|see.extender}",
     kDefinition, "see.extended=true"},
    {"see.focal_mm", "Focal length", "mm", "", kChosen},
    {"see.f_number", "f-number", "",
     "{f-number on the lens|see.marked_f_number} · {factor of the extender|see.extender}",
     kDefinition, "see.extended=true"},
    {"see.f_number", "f-number", "", "", kChosen},
    {"see.widest_stop", "Widest stop of the lens", "", "", kLibrary},
    {"see.close_focus_m", "Nearest focus of the lens", "m", "", kLibrary},
    {"see.focus_m", "Focus distance", "m", "", kChosen},
    {"see.horizontal_fov_deg", "Horizontal field of view of the mode", "°",
     "2 · atan({squeeze|mode.squeeze} · {mode width|mode.width_mm} / (2 · {focal "
     "length|see.focal_mm}))",
     kGeometry},
    {"see.vertical_fov_deg", "Vertical field of view of the mode", "°",
     "2 · atan({mode height|mode.height_mm} / (2 · {focal length|see.focal_mm}))", kGeometry},
    {"see.diagonal_fov_deg", "Diagonal field of view of the mode", "°",
     "2 · atan(sqrt(({squeeze|mode.squeeze} · {mode width|mode.width_mm})² + {mode "
     "height|mode.height_mm}²) / (2 · {focal length|see.focal_mm}))",
     kGeometry},
    {"see.frame_horizontal_fov_deg", "Horizontal field of view of the frame line", "°",
     "2 · atan({squeeze|mode.squeeze} · {frame width|frame.width_mm} / (2 · {focal "
     "length|see.focal_mm}))",
     kGeometry},
    {"see.frame_vertical_fov_deg", "Vertical field of view of the frame line", "°",
     "2 · atan({frame height|frame.height_mm} / (2 · {focal length|see.focal_mm}))", kGeometry},
    {"see.frame_diagonal_fov_deg", "Diagonal field of view of the frame line", "°",
     "2 · atan(sqrt(({squeeze|mode.squeeze} · {frame width|frame.width_mm})² + {frame "
     "height|frame.height_mm}²) / (2 · {focal length|see.focal_mm}))",
     kGeometry},
    {"see.magnification", "Magnification", "×",
     "{focal length|see.focal_mm} / (1000 · {focus distance|see.focus_m} − {focal "
     "length|see.focal_mm})",
     kThinLens},
    {"see.width_at_focus_m", "Width in the frame line at focus", "m",
     "{squeeze|mode.squeeze} · {frame width|frame.width_mm} / {magnification|see.magnification} / "
     "1000",
     kThinLens},
    {"see.height_at_focus_m", "Height in the frame line at focus", "m",
     "{frame height|frame.height_mm} / {magnification|see.magnification} / 1000", kThinLens},
    {"see.mode_width_at_focus_m", "Width of the whole mode at focus", "m",
     "{squeeze|mode.squeeze} · {mode width|mode.width_mm} / {magnification|see.magnification} / "
     "1000",
     kThinLens},
    {"see.mode_height_at_focus_m", "Height of the whole mode at focus", "m",
     "{mode height|mode.height_mm} / {magnification|see.magnification} / 1000", kThinLens},
    {"see.wanted_width_m", "Wanted width in the scene", "m", "", kChosen},
    {"see.distance_for_wanted_width_m", "Distance for the wanted width", "m",
     "{focal length|see.focal_mm} / 1000 · (1000 · {wanted|see.wanted_width_m} / "
     "({squeeze|mode.squeeze} · {frame width|frame.width_mm}) + 1)",
     kThinLens},
    {"see.focal_for_wanted_width_mm", "Focal length for the wanted width", "mm",
     "1000 · {focus distance|see.focus_m} / (1 + 1000 · {wanted|see.wanted_width_m} / "
     "({squeeze|mode.squeeze} · {frame width|frame.width_mm}))",
     kThinLens},
    {"see.wanted_height_m", "Wanted height in the scene", "m", "", kChosen},
    {"see.distance_for_wanted_height_m", "Distance for the wanted height", "m",
     "{focal length|see.focal_mm} / 1000 · (1000 · {wanted|see.wanted_height_m} / {frame "
     "height|frame.height_mm} + 1)",
     kThinLens},
    {"see.focal_for_wanted_height_mm", "Focal length for the wanted height", "mm",
     "1000 · {focus distance|see.focus_m} / (1 + 1000 · {wanted|see.wanted_height_m} / {frame "
     "height|frame.height_mm})",
     kThinLens},
    {"see.circle_of_confusion_mm", "Circle of confusion", "mm", "", "chosen in the plan",
     "see.circle_chosen=true"},
    {"see.circle_of_confusion_mm", "Circle of confusion", "mm",
     "0.025 · sqrt(({squeeze|mode.squeeze} · {frame width|frame.width_mm})² + {frame "
     "height|frame.height_mm}²) / 31.115",
     "0.025 mm on the 35 mm full aperture; common practice, no source"},
    {"see.hyperfocal_m", "Hyperfocal distance", "m",
     "({focal length|see.focal_mm}² / ({f-number|see.f_number} · {circle of "
     "confusion|see.circle_of_confusion_mm}) + {focal length|see.focal_mm}) / 1000",
     kThinLens},
    {"see.near_m", "Nearest sharp distance", "m",
     "{focus|see.focus_m} · ({hyperfocal|see.hyperfocal_m} − {focal length|see.focal_mm} / 1000) / "
     "({hyperfocal|see.hyperfocal_m} + {focus|see.focus_m} − 2 · {focal length|see.focal_mm} / "
     "1000)",
     kThinLens},
    {"see.far_m", "Farthest sharp distance", "m",
     "{focus|see.focus_m} · ({hyperfocal|see.hyperfocal_m} − {focal length|see.focal_mm} / 1000) / "
     "({hyperfocal|see.hyperfocal_m} − {focus|see.focus_m})",
     kThinLens},
    {"see.horizontal_depth.hyperfocal_m", "Hyperfocal distance across the width", "m",
     "(({focal length|see.focal_mm} / {squeeze|mode.squeeze})² / ({f-number|see.f_number} · "
     "{circle of confusion|see.circle_of_confusion_mm} / {squeeze|mode.squeeze}) + {focal "
     "length|see.focal_mm} / {squeeze|mode.squeeze}) / 1000",
     "thin lens; focal length and circle divided by the squeeze, common practice, no source"},
    {"see.horizontal_depth.near_m", "Nearest sharp distance across the width", "m",
     "{focus|see.focus_m} · ({hyperfocal|.hyperfocal_m} − {focal length|see.focal_mm} / "
     "{squeeze|mode.squeeze} / 1000) / ({hyperfocal|.hyperfocal_m} + {focus|see.focus_m} − 2 · "
     "{focal length|see.focal_mm} / {squeeze|mode.squeeze} / 1000)",
     kThinLens},
    {"see.horizontal_depth.far_m", "Farthest sharp distance across the width", "m",
     "{focus|see.focus_m} · ({hyperfocal|.hyperfocal_m} − {focal length|see.focal_mm} / "
     "{squeeze|mode.squeeze} / 1000) / ({hyperfocal|.hyperfocal_m} − {focus|see.focus_m})",
     kThinLens},
    {"see.matched_extent_mm", "Extent that is matched, here", "mm",
     "{squeeze|mode.squeeze} · {mode width|mode.width_mm}", kGeometry, "see.match=width"},
    {"see.matched_extent_mm", "Extent that is matched, here", "mm", "{mode height|mode.height_mm}",
     kGeometry, "see.match=height"},
    {"see.matched_extent_mm", "Extent that is matched, here", "mm",
     "sqrt(({squeeze|mode.squeeze} · {mode width|mode.width_mm})² + {mode height|mode.height_mm}²)",
     kGeometry, "see.match=diagonal"},
    {"see.equivalent_focal_mm.#.squeeze", "Squeeze of the lens there", "×", "",
     "the lens in use, or what the mode is made for"},
    {"see.equivalent_focal_mm.#.matched_extent_mm", "Extent that is matched, there", "mm", "",
     kLibrary},
    {"see.equivalent_focal_mm.#.focal_mm", "Focal length with the same view", "mm",
     "{focal length|see.focal_mm} · {extent there|.matched_extent_mm} / {extent "
     "here|see.matched_extent_mm}",
     kGeometry},

    // Resolve
    {"resolve.recorded_width_pixels", "Recorded width", "px", "", "the recording option"},
    {"resolve.recorded_height_pixels", "Recorded height", "px", "", "the recording option"},
    {"resolve.in_camera_desqueeze", "De-squeeze in camera", "×", "", "the recording option"},
    {"resolve.recorded_squeeze", "Squeeze left in the file", "×",
     "{squeeze|mode.squeeze} / {de-squeeze in camera|resolve.in_camera_desqueeze}", kDefinition},
    {"resolve.horizontal_resample", "Recorded pixels per photosite across", "",
     "{recorded width|resolve.recorded_width_pixels} / {mode width|mode.width_photosites}",
     kDefinition},
    {"resolve.vertical_resample", "Recorded pixels per photosite down", "",
     "{recorded height|resolve.recorded_height_pixels} / {mode height|mode.height_photosites}",
     kDefinition},
    {"resolve.frame_photosites", "Photosites inside the frame line", "photosites",
     "{width|frame.width_photosites} · {height|frame.height_photosites}", kCounted},
    {"resolve.mode_photosites", "Photosites of the mode", "photosites",
     "{width|mode.width_photosites} · {height|mode.height_photosites}", kCounted},
    {"resolve.deliverable_width_pixels", "Deliverable width", "px", "", kChosen},
    {"resolve.deliverable_height_pixels", "Deliverable height", "px", "", kChosen},
    {"resolve.picture_width_pixels", "Picture width in the deliverable", "px",
     "min({deliverable width|resolve.deliverable_width_pixels}, {deliverable "
     "height|resolve.deliverable_height_pixels} · {aspect|frame.aspect})",
     kGeometry},
    {"resolve.picture_height_pixels", "Picture height in the deliverable", "px",
     "{picture width|resolve.picture_width_pixels} / {aspect|frame.aspect}", kGeometry},
    {"resolve.horizontal_scale", "Scale across, after de-squeeze", "×",
     "{picture width|resolve.picture_width_pixels} / ({frame width in the file|frame.width_pixels} "
     "· {squeeze left in the file|resolve.recorded_squeeze})",
     kDefinition},
    {"resolve.vertical_scale", "Scale down the height", "×",
     "{picture height|resolve.picture_height_pixels} / {frame height in the "
     "file|frame.height_pixels}",
     kDefinition},
    {"resolve.nominal_scale", "Largest enlargement of all frame lines", "×", "",
     "the largest of the frame lines' own"},
    {"resolve.horizontal_sampled_scale", "Scale across, from what was sampled", "×",
     "{picture width|resolve.picture_width_pixels} / min({frame width in the "
     "file|frame.width_pixels}, {frame width in photosites|frame.width_photosites})",
     kDefinition},
    {"resolve.vertical_sampled_scale", "Scale down the height, from what was sampled", "×",
     "{picture height|resolve.picture_height_pixels} / min({frame height in the "
     "file|frame.height_pixels}, {frame height in photosites|frame.height_photosites})",
     kDefinition},
    {"resolve.mandate.required", "Photosites required", "photosites", "",
     "chosen in the plan; ask the commissioner"},
    {"resolve.mandate.have", "Photosites counted", "photosites",
     "{width|mode.width_photosites} · {height|mode.height_photosites}",
     "counted on the mode, as commissioners do; common practice, no source", "given.counted=mode"},
    {"resolve.mandate.have", "Photosites counted", "photosites",
     "{width|frame.width_photosites} · {height|frame.height_photosites}",
     "counted inside the frame line, as the commission asks", "given.counted=frame"},
    {"resolve.mandate.have", "Pixels of the scan counted", "px",
     "min({scanned|resolve.mode_photosites}, {gate width|mode.width_mm} · {gate "
     "height|mode.height_mm} · {pixels a millimetre|film.scan_pixels_per_mm}²)",
     kPractice, "given.counted=scan"},
    {"resolve.mandate.have", "Pixels of the scan counted inside the frame line", "px",
     "min({scanned|resolve.frame_photosites}, {frame width|frame.width_mm} · {frame "
     "height|frame.height_mm} · {pixels a millimetre|film.scan_pixels_per_mm}²)",
     kPractice, "given.counted=scanned_frame"},
    {"resolve.mandate.frame_have", "Photosites inside the frame line", "photosites",
     "{width|frame.width_photosites} · {height|frame.height_photosites}", kCounted},
    {"resolve.mandate.mode_have", "Photosites of the mode", "photosites",
     "{width|mode.width_photosites} · {height|mode.height_photosites}", kCounted},

    // What is asked for: the requirements stand in the report one after the other
    {"commission.requirements.#.have", "What there is", "", "",
     "judged by the figure of that name, in the unit beside it"},
    {"commission.requirements.#.need", "What is asked for", "", "",
     "the commission or the plan; ask the commissioner"},
    {"commission.requirements.#.margin", "To spare", "", "",
     "what there is over what is asked for, or under it where it may be no more"},

    {"resolve.nyquist_cycles_per_mm", "Nyquist limit of the photosites", "cycles/mm",
     "1000 / (2 · {pitch|mode.pitch_um})", "sampling theorem"},
    {"resolve.diffraction_limit_f_number", "f-number at which diffraction passes the Nyquist limit",
     "", "2 · {pitch|mode.pitch_um} / 0.55",
     "cut-off of an ideal lens at 550 nm, textbook optics; the wavelength is common practice, no "
     "source"},

    // Run
    {"run.project_rate_fps", "Project rate", "fps", "", kChosen},
    {"run.sensor_rate_fps", "Sensor rate", "fps", "", kChosen},
    {"run.exposure_s", "Exposure time", "s", "", kChosen, "run.shutter_is_time=true"},
    {"run.exposure_s", "Exposure time", "s",
     "{shutter angle|run.shutter_deg} / (360 · {sensor rate|run.sensor_rate_fps})", kDefinition},
    {"run.shutter_deg", "Shutter angle", "°",
     "{exposure|run.exposure_s} · 360 · {sensor rate|run.sensor_rate_fps}", kDefinition,
     "run.shutter_is_time=true"},
    {"run.shutter_deg", "Shutter angle", "°", "", kChosen},
    {"run.base_angle_deg", "Shutter angle to compare with", "°", "", kChosen},
    {"run.speed_factor", "Speed", "×",
     "{sensor rate|run.sensor_rate_fps} / {project rate|run.project_rate_fps}", kDefinition},
    {"run.exposure_change_stops", "Exposure change", "stops",
     "log2({exposure|run.exposure_s} · 360 · {project rate|run.project_rate_fps} / {base "
     "angle|run.base_angle_deg})",
     kDefinition},
    {"run.flicker.mains_hz", "Mains frequency", "Hz", "", kChosen},
    {"run.flicker.pulses_hz", "Pulses of the lights a second", "Hz", "", kChosen,
     "run.flicker.lights=frequency"},
    {"run.flicker.pulses_hz", "Pulses of the lights a second", "Hz",
     "2 · {mains|run.flicker.mains_hz}", "a lamp brightens twice in each cycle of the mains"},
    {"run.flicker.pulses_per_exposure", "Pulses in an exposure", "",
     "{pulses a second|run.flicker.pulses_hz} · {exposure|run.exposure_s}", kDefinition},
    {"run.flicker.pulses_per_frame", "Pulses from frame to frame", "",
     "{pulses a second|run.flicker.pulses_hz} / {sensor rate|run.sensor_rate_fps}", kDefinition},
    {"run.flicker.depth_percent", "Ripple, half of most less least over the mean", "%",
     "100 · abs(sin(180 · {pulses in an exposure|run.flicker.pulses_per_exposure})) / (pi · "
     "{pulses in an exposure|run.flicker.pulses_per_exposure})",
     "mean of the light 1 + cos over the exposure; lamps that never go dark ripple less"},
    {"run.flicker.beat_hz", "Ripple comes and goes, times a second", "Hz",
     "abs({pulses a second|run.flicker.pulses_hz} − floor({pulses from frame to "
     "frame|run.flicker.pulses_per_frame} + 0.5) · {sensor rate|run.sensor_rate_fps})",
     "distance from the nearest whole multiple of the rate, nought included"},
    {"run.flicker.beat_s", "One beat of the ripple", "s",
     "1 / {beats a second|run.flicker.beat_hz}", kDefinition},
    {"run.flicker.read_out_s", "Read-out of the sensor", "s", "", kLibrary},
    {"run.flicker.band_count", "Bands over the height of the picture", "",
     "{read-out|run.flicker.read_out_s} · {pulses a second|run.flicker.pulses_hz}", kDefinition},
    {"run.flicker.nearest_safe_shutter_deg.#", "Safe shutter angle near this one", "°", "",
     "the exact angle, as one that can be dialled where the ripple stays under 1 %; common "
     "practice, no source"},
    {"run.flicker.nearest_safe_exact_deg.#", "Safe shutter angle, exact", "°",
     "floor({this angle|.*} · {pulses a second|run.flicker.pulses_hz} / (360 · {sensor "
     "rate|run.sensor_rate_fps}) + 0.5) · 360 · {sensor rate|run.sensor_rate_fps} / {pulses a "
     "second|run.flicker.pulses_hz}",
     "a whole number of light pulses in each exposure"},
    {"run.rate_ceiling_fps", "Highest frame rate", "fps",
     "{card write speed|given.card_write_bytes_per_s} / {frame as "
     "stored|store.bytes_per_frame_stored}",
     kDefinition, "run.rate_limited_by=card"},
    {"run.rate_ceiling_fps", "Highest frame rate", "fps", "", kLibrary},
    {"run.screen_minutes_per_card", "Playing time of a full card", "min",
     "{frames per card|store.frames_per_card} / {project rate|run.project_rate_fps} / 60",
     kDefinition, "", WithFrameSize::falls},

    // Film
    {"film.gauge_mm", "Width of the film", "mm", "", kLibrary},
    {"film.perforations", "Perforations of a frame", "", "", kLibrary},
    {"film.scan_pixels_per_mm", "Pixels counted as picture, a millimetre", "px/mm", "",
     "35 mm is scanned at 4K, 16 mm at 2K; common practice, no source"},
    {"film.frame_picture_pixels", "Picture inside the frame line", "px",
     "min({scanned|resolve.frame_photosites}, {frame width|frame.width_mm} · {frame "
     "height|frame.height_mm} · {pixels a millimetre|film.scan_pixels_per_mm}²)",
     kPractice},
    {"film.mode_picture_pixels", "Picture in the whole scan", "px",
     "min({scanned|resolve.mode_photosites}, {gate width|mode.width_mm} · {gate "
     "height|mode.height_mm} · {pixels a millimetre|film.scan_pixels_per_mm}²)",
     kPractice},
    {"film.frames_per_foot_number", "Frames on a foot", "", "", kLibrary},
    {"film.feet_per_minute", "Feet a minute", "ft/min",
     "60 · {sensor rate|run.sensor_rate_fps} / {frames on a foot|film.frames_per_foot_number}",
     kDefinition},
    {"film.metres_per_minute", "Metres a minute", "m/min",
     "{feet a minute|film.feet_per_minute} · 0.3048", "the international foot"},
    {"film.magazine_feet", "Magazine", "ft", "", kChosen},
    {"film.magazine_minutes", "A magazine runs for", "min",
     "{magazine|film.magazine_feet} / {feet a minute|film.feet_per_minute}", kDefinition},
    {"film.magazines.#.feet", "Length of stock", "ft", "", kPractice},
    {"film.magazines.#.minutes", "It runs for", "min",
     "{length|.feet} / {feet a minute|film.feet_per_minute}", kDefinition},
    {"film.feet_per_day", "Stock a day, each camera", "ft",
     "{recorded hours|store.recorded_hours_per_day} · 60 · {feet a minute|film.feet_per_minute}",
     kDefinition},
    {"film.magazines_per_day", "Magazines a day, each camera", "",
     "ceil({feet a day|film.feet_per_day} / {magazine|film.magazine_feet})", kDefinition},
    {"film.feet", "Stock, the whole shoot", "ft",
     "{feet a day|film.feet_per_day} · {days|given.days} · {units|given.units} · "
     "{cameras|given.cameras_per_unit}",
     kDefinition},
    {"film.metres", "Stock, the whole shoot", "m", "{feet|film.feet} · 0.3048",
     "the international foot"},
    {"film.stock_cost", "Stock", "",
     "{feet|film.feet} · {price of a foot|given.stock_price_per_foot}", kDefinition},
    {"film.processing_cost", "Processing", "",
     "{feet|film.feet} · {price of a foot|given.processing_price_per_foot}", kDefinition},
    {"film.scanning_cost", "Scanning", "",
     "{feet|film.feet} · {price of a foot|given.scanning_price_per_foot}", kDefinition},
    {"film.cost", "Film together", "",
     "{stock|film.stock_cost} + {processing|film.processing_cost} + {scanning|film.scanning_cost}",
     kDefinition},

    // Store
    {"store.bytes_per_frame", "A coded frame", "bytes",
     "{recorded height|resolve.recorded_height_pixels} · (ceil(ceil({recorded "
     "width|resolve.recorded_width_pixels} / {pixels in a block|given.codec_block_pixels}) · "
     "{bytes of a block|given.codec_block_bytes} / {row multiple|given.codec_row_multiple}) · {row "
     "multiple|given.codec_row_multiple} + {added to a row|given.codec_row_extra}) + {added to a "
     "frame|given.codec_frame_extra}",
     "the codec's layout", "given.codec_form=packed"},
    {"store.bytes_per_frame", "A coded frame", "bytes",
     "ceil({recorded width|resolve.recorded_width_pixels} · {recorded "
     "height|resolve.recorded_height_pixels} · {bits of a pixel|given.codec_bits} / "
     "{ratio|given.codec_ratio} / 8)",
     kDefinition, "given.codec_form=ratio"},
    {"store.bytes_per_frame", "A coded frame", "bytes",
     "ceil({recorded width|resolve.recorded_width_pixels} · {recorded "
     "height|resolve.recorded_height_pixels} · {bits of a pixel|given.codec_bits} / {ratio the "
     "picture allows|given.codec_lossless_ratio} / 8)",
     kDefinition, "given.codec_form=lossless"},
    {"store.bytes_per_frame", "A coded frame", "bytes",
     "max({smallest frame|given.codec_minimum}, {step|given.codec_step} · "
     "floor((floor(ceil({recorded width|resolve.recorded_width_pixels} / 16) · ceil({recorded "
     "height|resolve.recorded_height_pixels} / 16) · {multiplier|given.codec_numerator} / "
     "{divisor|given.codec_denominator}) + {step|given.codec_step} / 2) / "
     "{step|given.codec_step}))",
     "SMPTE ST 2019-1, resolution-independent profiles; from measured frames",
     "given.codec_form=macroblock"},
    {"store.bytes_per_frame", "A coded frame", "bytes", "", "the codec's table of frame sizes",
     "given.codec_form=table"},
    {"store.bytes_per_frame", "A coded frame", "bytes",
     "ceil({bit rate|given.codec_bits_per_s} / 8 / {sensor rate|run.sensor_rate_fps})", kDefinition,
     "given.codec_form=bit_rate"},
    {"store.bytes_per_frame", "A coded frame", "bytes",
     "ceil({bytes measured|given.codec_measured_bytes} / {frames "
     "measured|given.codec_measured_frames} · {recorded width|resolve.recorded_width_pixels} · "
     "{recorded height|resolve.recorded_height_pixels} / ({width "
     "measured|given.codec_measured_width} · {height measured|given.codec_measured_height}))",
     "own measurement", "given.codec_form=measured"},
    {"store.bytes_per_frame_stored", "A frame as stored", "bytes",
     "{coded frame|store.bytes_per_frame} + {container|given.container_bytes_per_frame} + "
     "{container for a channel|given.container_audio_bytes} · {channels|given.channels_recorded}",
     kDefinition},
    {"store.audio_bytes_per_s", "Sound", "bytes/s",
     "{channels|given.channels_recorded} · 48000 · 24 / 8",
     "48 kHz, 24 bit; common practice, no source"},
    {"store.bytes_per_s", "Data rate", "bytes/s",
     "{frame as stored|store.bytes_per_frame_stored} · {sensor rate|run.sensor_rate_fps} + "
     "{sound|store.audio_bytes_per_s}",
     kDefinition},
    {"store.bytes_per_minute", "A minute", "bytes", "{bytes per second|store.bytes_per_s} · 60",
     kDefinition},
    {"store.usable_card_bytes", "Usable on a card", "bytes",
     "floor({card capacity|given.card_capacity_bytes} · {usable share|given.card_usable_share})",
     kDefinition},
    {"store.frames_per_card", "Frames on a card", "frames",
     "floor({usable on a card|store.usable_card_bytes} · {sensor rate|run.sensor_rate_fps} / "
     "{bytes per second|store.bytes_per_s})",
     kDefinition, "", WithFrameSize::falls},
    {"store.minutes_per_card", "Minutes per card", "min",
     "{frames on a card|store.frames_per_card} / {sensor rate|run.sensor_rate_fps} / 60",
     kDefinition, "", WithFrameSize::falls},
    {"store.write_headroom", "Card speed over data rate", "×",
     "{card write speed|given.card_write_bytes_per_s} / {bytes per second|store.bytes_per_s}",
     kDefinition, "", WithFrameSize::falls},
    {"store.recorded_hours_per_day", "Recorded hours a day, each camera", "h",
     "{script length|given.script_minutes} · {shooting ratio|given.shooting_ratio} / 60 / "
     "({days|given.days} · {units|given.units} · {cameras|given.cameras_per_unit}) · {project "
     "rate|run.project_rate_fps} / {sensor rate|run.sensor_rate_fps}",
     kDefinition, "given.shooting_by=ratio"},
    {"store.recorded_hours_per_day", "Recorded hours a day, each camera", "h", "", kChosen},
    {"store.cards_per_day", "Cards a day, each camera", "cards", "", "film fills no cards",
     "store.no_cards=true"},
    {"store.cards_per_day", "Cards a day, each camera", "cards",
     "ceil({recorded hours|store.recorded_hours_per_day} · 3600 · {sensor "
     "rate|run.sensor_rate_fps} / {frames on a card|store.frames_per_card})",
     kDefinition},
    {"store.card_change_minutes", "From one card change to the next", "min",
     "if_less({cards a day|store.cards_per_day}, 2, 60 · max({shooting day|given.day_hours}, "
     "{recorded hours|store.recorded_hours_per_day}), min({minutes per "
     "card|store.minutes_per_card} · max({shooting day|given.day_hours}, {recorded "
     "hours|store.recorded_hours_per_day}) / {recorded hours|store.recorded_hours_per_day}, 60 · "
     "max({shooting day|given.day_hours}, {recorded hours|store.recorded_hours_per_day}) / ({cards "
     "a day|store.cards_per_day} − 1)))",
     "running time spread evenly over the day", "", WithFrameSize::falls},
    {"store.cards_in_rotation", "Cards in rotation, each camera", "cards", "",
     "the day followed card by card: fill, travel, queue, copy, verify, return"},
    {"store.offload_bytes_per_s", "Speed of copying", "bytes/s",
     "min({card read|given.card_read_bytes_per_s}, {link|given.link_bytes_per_s}, {drive "
     "write|given.drive_write_bytes_per_s}, {drive read|given.drive_read_bytes_per_s}, "
     "{checksum|given.checksum_bytes_per_s})",
     "the slowest part sets the pace", "given.copying=drives, verified"},
    {"store.offload_bytes_per_s", "Speed of copying", "bytes/s",
     "min({card read|given.card_read_bytes_per_s}, {link|given.link_bytes_per_s}, {drive "
     "write|given.drive_write_bytes_per_s})",
     "the slowest part sets the pace", "given.copying=drives"},
    {"store.offload_bytes_per_s", "Speed of copying", "bytes/s",
     "min({card read|given.card_read_bytes_per_s}, {link|given.link_bytes_per_s}, "
     "{checksum|given.checksum_bytes_per_s})",
     "the slowest part sets the pace", "given.copying=no drives, verified"},
    {"store.offload_bytes_per_s", "Speed of copying", "bytes/s",
     "min({card read|given.card_read_bytes_per_s}, {link|given.link_bytes_per_s})",
     "the slowest part sets the pace"},
    {"store.offload_passes", "Passes over the data", "", "", "the verification chosen in the plan"},
    {"store.offload_minutes_per_card", "Copying a full card", "min", "", "film fills no cards",
     "store.no_cards=true"},
    {"store.offload_minutes_per_card", "Copying a full card", "min",
     "{usable on a card|store.usable_card_bytes} · {passes|store.offload_passes} / {speed of "
     "copying|store.offload_bytes_per_s} / 60",
     kDefinition},
    {"store.offload_hours_per_day", "Copying a day, each unit", "h", "", "film fills no cards",
     "store.no_cards=true"},
    {"store.offload_hours_per_day", "Copying a day, each unit", "h",
     "{recorded hours|store.recorded_hours_per_day} · {bytes per second|store.bytes_per_s} · "
     "{cameras|given.cameras_per_unit} · {passes|store.offload_passes} / {speed of "
     "copying|store.offload_bytes_per_s}",
     kDefinition},
    {"store.shoot_total_bytes", "Whole shoot", "bytes",
     "{recorded hours|store.recorded_hours_per_day} · 3600 · {bytes per second|store.bytes_per_s} "
     "· {cameras|given.cameras_per_unit} · {units|given.units} · {days|given.days}",
     kDefinition},
    {"store.copies_total_bytes", "All copies", "bytes",
     "{whole shoot|store.shoot_total_bytes} · ({copies on drives|given.drive_copies} + {copies on "
     "tape|given.tape_copies})",
     kDefinition},
    {"store.drives", "Drives, cards in one piece", "drives", "",
     "first-fit decreasing: the largest cards first, each where there is room"},
    {"store.fewest_drives", "Drives, at the very least", "drives",
     "{copies on drives|given.drive_copies} · ceil({whole shoot|store.shoot_total_bytes} / {drive "
     "capacity|given.drive_capacity_bytes})",
     kDefinition},
    {"store.drive_gib", "A drive, as computers may report it", "GiB",
     "{drive capacity|given.drive_capacity_bytes} / (1024 · 1024 · 1024)",
     "binary prefixes, IEC 80000-13"},
    {"store.tapes", "Tapes, cards in one piece", "tapes", "",
     "first-fit decreasing: the largest cards first, each where there is room"},
    {"store.fewest_tapes", "Tapes, at the very least", "tapes",
     "{copies on tape|given.tape_copies} · ceil({whole shoot|store.shoot_total_bytes} / {tape "
     "capacity|given.tape_capacity_bytes})",
     kDefinition},
    {"store.copies", "Copies", "copies",
     "{copies on drives|given.drive_copies} + {copies on tape|given.tape_copies}", kCounted},
    {"store.tape_hours", "Writing tapes", "h",
     "{whole shoot|store.shoot_total_bytes} · {copies on tape|given.tape_copies} / if_less({copies "
     "on drives|given.drive_copies}, 1, {tape speed|given.tape_write_bytes_per_s}, min({tape "
     "speed|given.tape_write_bytes_per_s}, {drive read|given.drive_read_bytes_per_s})) / 3600",
     kDefinition, "given.verification=none"},
    {"store.tape_hours", "Writing tapes and reading them back", "h",
     "2 · {whole shoot|store.shoot_total_bytes} · {copies on tape|given.tape_copies} / "
     "if_less({copies on drives|given.drive_copies}, 1, {tape "
     "speed|given.tape_write_bytes_per_s}, min({tape speed|given.tape_write_bytes_per_s}, {drive "
     "read|given.drive_read_bytes_per_s})) / 3600",
     "a verified tape is read through once more, as fast as it was written"},
    {"store.playing_hours", "Playing time of all footage", "h",
     "{recorded hours|store.recorded_hours_per_day} · {days|given.days} · {units|given.units} · "
     "{cameras|given.cameras_per_unit} · {sensor rate|run.sensor_rate_fps} / {project "
     "rate|run.project_rate_fps}",
     kDefinition},
    {"store.upload_total_bytes", "Uploaded", "bytes",
     "{whole shoot|store.shoot_total_bytes} · {share uploaded|given.upload_share}", kDefinition,
     "given.upload_what=originals"},
    {"store.upload_total_bytes", "Uploaded", "bytes",
     "{playing time|store.playing_hours} · 3600 · {rate of the "
     "proxies|given.proxy_megabits_per_s} · 1000000 / 8 · {share uploaded|given.upload_share}",
     kDefinition},
    {"store.upload_hours", "Upload", "h",
     "{uploaded|store.upload_total_bytes} · 8 / ({upload speed|given.upload_megabits_per_s} · "
     "1000000) / 3600",
     kDefinition},
    {"store.cards_in_all", "Cards, all cameras", "cards", "", "film fills no cards",
     "store.no_cards=true"},
    {"store.cards_in_all", "Cards, all cameras", "cards",
     "{cards in rotation|store.cards_in_rotation} · {cameras|given.cameras_per_unit} · "
     "{units|given.units}",
     kDefinition},
    {"store.card_cost", "Cards", "", "", "film fills no cards", "store.no_cards=true"},
    {"store.card_cost", "Cards", "",
     "{cards|store.cards_in_all} · {price of a card|given.card_price}", kDefinition},
    {"store.drive_cost", "Drives", "",
     "{drives|store.drives} · {price of a drive|given.drive_price}", kDefinition},
    {"store.tape_cost", "Tapes", "", "{tapes|store.tapes} · {price of a tape|given.tape_price}",
     kDefinition},
    {"store.wrangler_cost", "Hours of copying", "", "", "film fills no cards",
     "store.no_cards=true"},
    {"store.wrangler_cost", "Hours of copying", "",
     "{copying a day|store.offload_hours_per_day} · {units|given.units} · {days|given.days} · "
     "{price of an hour|given.wrangler_price_per_hour}",
     kDefinition},
    {"store.upload_cost", "Upload", "",
     "{uploaded|store.upload_total_bytes} / 1000000000000 · {price of a "
     "terabyte|given.upload_price_per_terabyte}",
     kDefinition},
    {"store.cost", "All of it", "",
     "{drives|store.drive_cost} + {tapes|store.tape_cost} + {upload|store.upload_cost} + "
     "{film|film.cost}",
     kDefinition, "film.known=true"},
    {"store.cost", "All of it", "",
     "{drives|store.drive_cost} + {tapes|store.tape_cost} + {upload|store.upload_cost}",
     kDefinition, "store.no_cards=true"},
    {"store.cost", "All of it", "",
     "{cards|store.card_cost} + {drives|store.drive_cost} + {tapes|store.tape_cost} + "
     "{copying|store.wrangler_cost} + {upload|store.upload_cost}",
     kDefinition},

    // The ratio of a lossless codec falls as its frames grow; the front end shows it as given
    {"given.codec_lossless_ratio", "Ratio the picture allows", "", "", kLibrary, "",
     WithFrameSize::falls},

    // Notes
    {"notes.#.have", "What there is", "", "", "the figure the note is about"},
    {"notes.#.need", "What is needed", "", "", "the figure the note is about"},
});

}  // namespace

std::span<const FormulaRow> formula_rows() { return kRows; }

}  // namespace widegate
