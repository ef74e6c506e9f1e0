/** Who holds the packages in this page. */
import { packagesBeside, type Thread } from "./beside";
import { packagesHere } from "./here";
import type { Packages } from "./interface";

/** A file of the page's own origin, so that the page's policy stays strict. */
const startThread = (): Thread =>
  new Worker(new URL(/* webpackChunkName: "packages" */ "./worker.ts", import.meta.url)) as unknown as Thread;

export async function startPackages(): Promise<Packages> {
  try {
    return (await packagesBeside(startThread())) ?? packagesHere();
  } catch {
    // an old browser, or a place that lets no thread start
    return packagesHere();
  }
}
