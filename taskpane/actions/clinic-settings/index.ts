export { agreement } from "./agreement";
export {
  asTyped,
  cellNamed,
  forms,
  isRequired,
  writeEntries,
  type EntriesChoices,
  type EntriesPlan,
  type EntryName,
  type FormKey,
} from "./entries";
export { doubtful, settingLines, settingText, type SettingLine, type SettingsView } from "./lines";
