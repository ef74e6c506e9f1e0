/** Where things stand. A list has one line of title, the names of its groups of columns, and its header. */
export const listHeaderRow = 2;

/** Read first and Clinic settings: title, the line for invented people, the quiet line, who agreed the settings, a blank row, contents. */
export const titleRow = 0;
export const inventedRow = 1;
export const quietRow = 2;
export const agreedRow = 3;
export const headerRow = 5;
