import { useEffect, useState } from "react";
import { dayNumberOf, untilMidnight } from "../parts/dates";

/** Today as a day number, by the computer's clock: a page that is left open overnight learns of the next day. */
export function useCalendar(onNewDay: (today: number) => void): number {
  const [today, setToday] = useState(() => dayNumberOf(new Date()));
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    const nextDay = () => {
      timer = setTimeout(
        () => {
          const now = dayNumberOf(new Date());
          setToday(now);
          onNewDay(now);
          nextDay();
        },
        untilMidnight(new Date()) + 1_000,
      );
    };
    nextDay();
    return () => clearTimeout(timer);
  }, [onNewDay]);
  return today;
}
