// Not compiled: a folder of tests that mirrors none of the code.
