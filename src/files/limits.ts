/** Largest file that is read: four thousand keyboards of readings would fit. */
export const MAX_FILE_BYTES = 20 * 1024 * 1024;

/** Most rows a table may have, blank ones counted. */
export const MAX_ROWS = 100_000;

/** Most columns a table may have. */
export const MAX_COLUMNS = 500;

/** Longest line of a text file. */
export const MAX_LINE_CHARACTERS = 100_000;

/** Largest content of a workbook once unpacked: what a few kilobytes of ZIP may claim to hold is checked before it is unpacked. */
export const MAX_UNPACKED_BYTES = 64 * 1024 * 1024;

/** Most parts a workbook may have. */
export const MAX_PARTS = 1000;
