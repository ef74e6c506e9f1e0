import type { ReactNode } from "react";
import { cautions } from "../../../src/caseload/cautions";
import { agreement } from "../../actions/clinic-settings/agreement";
import { help as words } from "../../texts/help";
import { product } from "../../texts/pane";
import { dateText } from "../parts/dates";
import { Notice } from "../parts/Notice";
import { Sentences } from "../parts/Sentences";
import type { JobProps } from "../pane/define-job";

type Props = Pick<JobProps, "overview" | "today" | "locale" | "version" | "dayFirst">;

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="stack">
      <h3>{title}</h3>
      {children}
    </section>
  );
}

export function Help({ overview, today, locale, version, dayFirst }: Props) {
  const asOf = overview?.names.find(({ name }) => name.toLowerCase() === "as_of")?.value;
  const { agreed, sentence } = agreement(overview, today);
  return (
    <>
      <Notice kind={agreed ? "plain" : "caution"}>
        <p>{sentence}</p>
      </Notice>
      <Part title={words.cautions}>
        <ol className="bullets">
          {cautions.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ol>
      </Part>
      <Part title={words.whatItIsNot}>
        <Sentences of={words.notList} />
      </Part>
      <Part title={words.decides}>
        <p>{words.decidesText}</p>
      </Part>
      <Part title={words.dates}>
        <Sentences
          of={[
            ...words.dateList,
            ...(dayFirst ? [words.dayFirstIs[dayFirst]] : []),
            ...(overview ? [typeof asOf === "number" ? words.asOf(dateText(asOf, locale)) : words.asOfNone] : []),
          ]}
        />
      </Part>
      <Part title={words.privacy}>
        <p>{words.privacyText}</p>
        {dayFirst && <p>{words.privacyBrowser}</p>}
      </Part>
      {dayFirst && (
        <Part title={words.keyboard}>
          <p>{words.keyboardText}</p>
        </Part>
      )}
      <Part title={words.about}>
        <p>
          {product}. {words.version(version)}
        </p>
      </Part>
    </>
  );
}
