/**
 * Plain questions that people ask, and the functions that answer them, best first. What functions say of themselves is
 * searched too; here stands only what they do not say in these words.
 */
export const asked: readonly (readonly [questions: string, ...functions: readonly string[]])[] = [
  ["when is it due change next change date planned interval", "CHANGEDUE", "DUESTATE", "DUEDATES"],
  ["overdue late past", "DUESTATE", "CHANGEDUE"],
  ["how long does it last lasts lasting life wear out", "LIFETABLE", "LIFEQUANTILE", "FAILBY", "LIFECOMPARE"],
  ["fell out fallen out came out tube out pulled out dislodged lost emergency", "CAMEOUT", "TRACTSTATE", "REMOVAL"],
  ["leak leaks leaking leaky wet loose", "FREEPLAY", "STOMAFIT", "BALLOONTREND", "BALLOONHALF", "BALLOONSTATE"],
  ["burst empty balloon water lost losing", "BALLOONSTATE", "BALLOONTREND", "BALLOONHALF", "BALLOONDEVIATION"],
  ["when check balloon next check", "CHECKDUE", "BALLOONSTATE"],
  ["too short too long too tight fit fits length which length", "STOMAFIT", "STOMALENGTH", "FREEPLAY"],
  ["moved slipped in out mark", "MARKSHIFT"],
  ["take out remove pull", "REMOVAL", "RETENTION"],
  ["what holds it bumper or balloon which kind", "RETENTION"],
  ["new hole stoma tract opening healed mature old enough", "TRACTSTATE"],
  ["convert french charriere ch fr mm millimetre how thick", "FRTOMM", "MMTOFR"],
  ["label box print barcode code lot expiry scan", "READPRINT", "READCODE"],
  ["order stock spare spares how many to keep run out", "STOCKLEVEL", "SUPPLYNEED", "STOCKSIZE"],
  ["too many early changes who goes through tubes fast often", "WEARRATIO", "LIFECOMPARE"],
  ["compare two clinics two makes which lasts longer", "LIFECOMPARE", "RATERATIO"],
  ["how often rate unplanned per 1000", "RATE", "RATECHART", "RATERATIO", "TUBEDAYS"],
  ["workload busy month how many changes", "CHANGELOAD", "BOOK"],
  ["book appointment clinic session holiday closed day", "BOOK", "NEARESTOPEN"],
  ["how fast pump rate feed ml per hour", "PUMPRATE", "FEEDPLAN", "FEEDSTEPS"],
  ["missed feed stopped catch up behind", "CATCHUPRATE"],
  ["enough water fluid thirsty drink", "FLUIDGOAL", "WATERGAP", "FLUSHTOTAL"],
  ["calories energy need kcal", "RESTENERGY", "FEEDPLAN", "FEEDGIVES"],
  ["starving not eaten refeeding", "REFEEDINGRISK"],
  ["explain to family parents letter hand-out", "PLAINWORDS", "CAMEOUT"],
];
