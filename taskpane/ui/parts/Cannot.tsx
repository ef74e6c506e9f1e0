import { pane } from "../../texts/pane";
import { Notice } from "./Notice";

/** Why this host cannot do it at all; nothing where it can. */
export const Cannot = ({ why }: { readonly why: string | null }) =>
  why === null ? null : (
    <Notice kind="problem">
      <p>{pane.cannot(why)}</p>
    </Notice>
  );
