/** Before the browser tests: one browser for the whole run. Each file connects to it (launch.ts); pages are their own. */
import { SHARED, startBrowserServer } from "./launch";

export async function setup(): Promise<() => Promise<void>> {
  const server = await startBrowserServer();
  process.env[SHARED] = server.wsEndpoint();
  return () => server.close();
}
