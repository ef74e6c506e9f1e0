/** One call for many small changes: typing, pasting, filtering and selecting each come as a storm of Excel's events. */
import type { Stop } from "../port";

const QUIET = 200;

type Registration = OfficeExtension.EventHandlerResult<unknown>;

export function listen(tell: () => void): Stop {
  let isStopped = false;
  let clock: ReturnType<typeof setTimeout> | undefined;
  const happened = (): Promise<void> => {
    clearTimeout(clock);
    if (!isStopped) clock = setTimeout(tell, QUIET);
    return Promise.resolve();
  };
  const registered = register(happened).catch((): Registration[] => []);
  return () => {
    isStopped = true;
    clearTimeout(clock);
    void registered.then(unregister).catch(() => undefined);
  };
}

const register = (happened: () => Promise<void>): Promise<Registration[]> =>
  Excel.run(async (context) => {
    const { worksheets, tables } = context.workbook;
    const all = [
      worksheets.onSelectionChanged.add(happened),
      worksheets.onChanged.add(happened),
      worksheets.onActivated.add(happened),
      worksheets.onAdded.add(happened),
      worksheets.onDeleted.add(happened),
      worksheets.onRowHiddenChanged.add(happened),
      tables.onAdded.add(happened),
      tables.onDeleted.add(happened),
    ];
    await context.sync();
    return all as Registration[];
  });

async function unregister(registrations: readonly Registration[]): Promise<void> {
  const context = registrations[0]?.context;
  if (!context) return;
  for (const registration of registrations) registration.remove();
  await context.sync();
}
