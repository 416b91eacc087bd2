// Not compiled: no file of the core stands outside the folders of its map.
#pragma once
