import { memo, type ReactNode } from "react";

interface Props {
  readonly isShown: boolean;
  readonly children: ReactNode;
}

/**
 * A part of the pane. While another one is shown it keeps what was typed in it and rests: nothing reaches it, neither
 * the selection nor an edit of the sheet, until it is shown again.
 */
export const Kept = memo(
  function Kept({ isShown, children }: Props) {
    return (
      <div className="part" hidden={!isShown}>
        {children}
      </div>
    );
  },
  (before, now) => !before.isShown && !now.isShown,
);
