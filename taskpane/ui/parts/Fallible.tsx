import { Component, type ReactNode } from "react";
import { pane as paneTexts } from "../../texts/pane";
import { TryAgain } from "./TryAgain";

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
      <TryAgain
        sentence={paneTexts.unexpected(fault)}
        press={paneTexts.tryAgain}
        onPress={() => this.setState({ fault: null })}
      />
    );
  }
}
