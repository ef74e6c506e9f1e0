import { Notice } from "./Notice";

interface Props {
  readonly sentence: string;
  readonly press: string;
  readonly onPress: () => void;
}

/** Something could not be read or shown: why, and the press that tries again. */
export const TryAgain = ({ sentence, press, onPress }: Props) => (
  <Notice kind="problem">
    <p>{sentence}</p>
    <div className="presses">
      <button type="button" className="button" onClick={onPress}>
        {press}
      </button>
    </div>
  </Notice>
);
