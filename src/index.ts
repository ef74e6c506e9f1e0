/** The library's face: every worksheet function, in the order in which guides and lists show them. */
import { BALLOONDEVIATION } from "./balloon/balloondeviation";
import { BALLOONDIAMETER } from "./balloon/balloondiameter";
import { BALLOONHALF } from "./balloon/balloonhalf";
import { BALLOONSTATE } from "./balloon/balloonstate";
import { BALLOONTREND } from "./balloon/balloontrend";
import { CHECKDUE } from "./balloon/checkdue";
import { REMOVAL } from "./device/removal";
import { RETENTION } from "./device/retention";
import { BOLUSPLAN } from "./feed/bolusplan";
import { CATCHUPRATE } from "./feed/catchuprate";
import { DROPRATE } from "./feed/droprate";
import { FEEDGIVES } from "./feed/feedgives";
import { FEEDPLAN } from "./feed/feedplan";
import { FEEDSTEPS } from "./feed/feedsteps";
import { FLUIDGOAL } from "./feed/fluidgoal";
import { FLUSHTOTAL } from "./feed/flushtotal";
import { HANGFILLS } from "./feed/hangfills";
import { PUMPRATE } from "./feed/pumprate";
import { REFEEDINGRISK } from "./feed/refeedingrisk";
import { RESTENERGY } from "./feed/restenergy";
import { WATERGAP } from "./feed/watergap";
import { FREEPLAY } from "./fit/freeplay";
import { MARKSHIFT } from "./fit/markshift";
import { STOMAFIT } from "./fit/stomafit";
import { STOMALENGTH } from "./fit/stomalength";
import { BOOK } from "./schedule/book";
import { CHANGEDUE } from "./schedule/changedue";
import { CHANGELOAD } from "./schedule/changeload";
import { DUEDATES } from "./schedule/duedates";
import { DUESTATE } from "./schedule/duestate";
import { NEARESTOPEN } from "./schedule/nearestopen";
import { TRACTSTATE } from "./schedule/tractstate";
import { RATE } from "./service/rate";
import { RATECHART } from "./service/ratechart";
import { RATERATIO } from "./service/rateratio";
import { TUBEDAYS } from "./service/tubedays";
import { FRTOMM } from "./sizes/frtomm";
import { MMTOFR } from "./sizes/mmtofr";
import { READPRINT } from "./sizes/readprint";
import { STOCKSIZE } from "./sizes/stocksize";
import { READCODE } from "./supplies/readcode";
import { STOCKLEVEL } from "./supplies/stocklevel";
import { SUPPLYNEED } from "./supplies/supplyneed";
import { AGEREPLACE } from "./wear/agereplace";
import { FAILBY } from "./wear/failby";
import { FAILBYID } from "./wear/failbyid";
import { LIFECOMPARE } from "./wear/lifecompare";
import { LIFEQUANTILE } from "./wear/lifequantile";
import { LIFETABLE } from "./wear/lifetable";
import { LIFEWEIBULL } from "./wear/lifeweibull";
import { LOTSIGNAL } from "./wear/lotsignal";
import { NOSPARE } from "./wear/nospare";
import { UNPLANNED } from "./wear/unplanned";
import { WEARRATIO } from "./wear/wearratio";
import { CAMEOUT } from "./words/cameout";
import { PLAINWORDS } from "./words/plainwords";
import type { SheetFunction } from "./worksheet/define";

export const functions: readonly SheetFunction[] = [
  FRTOMM,
  MMTOFR,
  READPRINT,
  STOCKSIZE,
  RETENTION,
  REMOVAL,
  BALLOONDEVIATION,
  BALLOONSTATE,
  CHECKDUE,
  BALLOONTREND,
  BALLOONHALF,
  BALLOONDIAMETER,
  CHANGEDUE,
  DUEDATES,
  DUESTATE,
  NEARESTOPEN,
  TRACTSTATE,
  CHANGELOAD,
  BOOK,
  STOMALENGTH,
  STOMAFIT,
  FREEPLAY,
  MARKSHIFT,
  LIFETABLE,
  LIFEQUANTILE,
  LIFECOMPARE,
  LIFEWEIBULL,
  FAILBY,
  WEARRATIO,
  FAILBYID,
  AGEREPLACE,
  LOTSIGNAL,
  UNPLANNED,
  NOSPARE,
  TUBEDAYS,
  RATE,
  RATERATIO,
  RATECHART,
  STOCKLEVEL,
  SUPPLYNEED,
  READCODE,
  RESTENERGY,
  FLUIDGOAL,
  FEEDPLAN,
  FEEDGIVES,
  PUMPRATE,
  BOLUSPLAN,
  DROPRATE,
  FLUSHTOTAL,
  WATERGAP,
  FEEDSTEPS,
  CATCHUPRATE,
  HANGFILLS,
  REFEEDINGRISK,
  CAMEOUT,
  PLAINWORDS,
];
