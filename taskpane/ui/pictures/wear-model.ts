/** The frailty model is fitted once for one set of devices, whichever pictures rest on it. */
import { useMemo } from "react";
import { wearModel, type WearModel } from "../../../src/pictures/advice";
import type { Device } from "../../../src/pictures/devices";

const fitted = new WeakMap<readonly Device[], WearModel>();

export function useWearModel(devices: readonly Device[]): WearModel {
  return useMemo(() => {
    const known = fitted.get(devices) ?? wearModel(devices);
    fitted.set(devices, known);
    return known;
  }, [devices]);
}
