/** The script of the thread that holds the packages. */
import { serve, type OwnThread } from "./serving";

serve(globalThis as unknown as OwnThread);
