/**
 * What is said on the telephone, on screen and on paper alike: what to do, whom to call, what is known and not known of
 * this tube, what cannot wait, what to take along. Every sentence comes from the action; here they are only put in order.
 */
import { Fragment } from "react";
import { TUBE_OUT } from "../../../src/caseload/cautions";
import { takeAlong } from "../../../src/words/cameout-texts";
import { mayGoBack, type TubeOutClass } from "../../../src/words/tube-out-class";
import type { TubeOut } from "../../actions/tube-out";
import type { Fact } from "../../actions/tube-out/facts";
import { tubeOut as words } from "../../texts/tube-out";
import { together } from "../../texts/pieces";
import { Notice } from "../parts/Notice";
import { Step } from "../parts/Step";
import { CallList } from "../forms/CallList";

const sentencesIn = (text: string): readonly string[] => text.split(/(?<=\.) /);

/** What holds for every tube, in large letters and in the order in which it is done. */
export const Orders = ({ of }: { readonly of: string }) => (
  <ol className="orders">
    {sentencesIn(of).map((order) => (
      <li key={order}>{order}</li>
    ))}
  </ol>
);

interface Props {
  readonly said: TubeOut;
  readonly agreed: string;
  /** Leads to the form for the numbers to call; left out on paper. */
  readonly enter?: () => void;
}

export function TubeOutAnswer({ said, agreed, enter }: Props) {
  const [orders, decides] = said.first as readonly [string, string];
  const along = said.more.indexOf(takeAlong);
  return (
    <>
      <div className="alarm-frame">
        <Orders of={orders} />
        <Decides text={decides} canGoBack={decides === said.middle && mayGoBack(said.is as TubeOutClass)} />
        {said.more.slice(0, along).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      <CallList calls={said.calls} {...(enter && { enter })} />
      {said.doubts.map((doubt) => (
        <Notice kind="caution" key={doubt}>
          <p>{doubt}</p>
        </Notice>
      ))}
      {said.facts.map(({ sheetRow, facts }) => (
        <Step key={sheetRow} title={said.facts.length === 1 ? words.known : words.rowKnown(sheetRow)}>
          <Facts of={facts} />
        </Step>
      ))}
      {said.notWritten.length > 0 && <p>{words.notWritten(together(said.notWritten))}</p>}
      {said.more.slice(along).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p className="note">{TUBE_OUT}</p>
      <p className="note">{agreed}</p>
    </>
  );
}

/** The sentence that decides. Where a tube may go back, its last part, the rule for any doubt, stands by itself. */
function Decides({ text, canGoBack }: { readonly text: string; readonly canGoBack: boolean }) {
  const all = sentencesIn(text);
  const [doing, doubt] = canGoBack ? [all.slice(0, -1), all.at(-1)] : [all, undefined];
  return (
    <>
      <p className="large">{doing.join(" ")}</p>
      {doubt !== undefined && <p className="large doubt-rule">{doubt}</p>}
    </>
  );
}

/** What is not known first: it is what has to be asked. */
function Facts({ of }: { readonly of: readonly Fact[] }) {
  const inOrder = [...of.filter(({ isWritten }) => !isWritten), ...of.filter(({ isWritten }) => isWritten)];
  return (
    <dl className="pairs">
      {inOrder.map(({ label, text, isWritten, isDoubt }) => (
        <Fragment key={label}>
          <dt>{label}</dt>
          <dd>
            {isWritten ? isDoubt ? <strong>{text}</strong> : text : <span className="state missing">{text}</span>}
          </dd>
        </Fragment>
      ))}
    </dl>
  );
}
