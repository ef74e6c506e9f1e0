import { Component, type ReactNode } from "react";
import { pane as paneTexts } from "../../texts/pane";
import { Notice } from "./Notice";

/** Keeps a fault in one section from taking the whole pane away: it becomes a sentence. */
export class Fallible extends Component<{ readonly children: ReactNode }, { readonly fault: string | null }> {
  override state = { fault: null as string | null };

  static getDerivedStateFromError(error: unknown) {
    return { fault: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    const { fault } = this.state;
    if (fault === null) return this.props.children;
    return (
      <Notice kind="problem">
        <p>{paneTexts.unexpected(fault)}</p>
        <div className="presses">
          <button type="button" className="button" onClick={() => this.setState({ fault: null })}>
            {paneTexts.tryAgain}
          </button>
        </div>
      </Notice>
    );
  }
}
