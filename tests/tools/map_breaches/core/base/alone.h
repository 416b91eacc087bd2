// Not compiled: the only file of a checkout whose map tells of folders that are not there.
#pragma once
