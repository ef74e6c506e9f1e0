import { Notice } from "./Notice";

interface Props {
  readonly sentence: string;
  readonly again: string;
  readonly onAgain: () => void;
}

/** The sheet could not be read: why, and the press that looks again. */
export const LookFailed = ({ sentence, again, onAgain }: Props) => (
  <Notice kind="problem">
    <p>{sentence}</p>
    <div className="presses">
      <button type="button" className="button" onClick={onAgain}>
        {again}
      </button>
    </div>
  </Notice>
);
