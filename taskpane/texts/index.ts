/** The language of the screen. A translation is one more file beside english.ts, of the same type, chosen here. */
export { english as texts } from "./english";
