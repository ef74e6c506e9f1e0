/** The name that holds today. Stored in people's workbooks. */
export const AS_OF = "As_of";
