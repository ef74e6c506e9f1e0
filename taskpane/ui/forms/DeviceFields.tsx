import { lists } from "../../actions/caseload/lists";
import type { DeviceField } from "../../actions/caseload/new-device";
import { forms } from "../../texts/forms";
import { NumberField, TextField, WordField } from "./Field";

const words = forms.device;

interface Props {
  readonly at: (field: DeviceField) => {
    readonly value: string;
    readonly fault: string | undefined;
    readonly onChange: (value: string) => void;
  };
}

/** The tube that is in: the same fields in every form. */
export function DeviceFields({ at }: Props) {
  return (
    <>
      <WordField label={words.heldBy} of={lists["Held by"]} {...at("heldBy")} />
      <WordField label={words.knownFrom} of={lists["Known from"]} {...at("knownFrom")} />
      <WordField label={words.shape} of={lists.Shape} {...at("shape")} />
      <TextField label={`${words.size}, ${forms.units.Fr}`} {...at("size")} />
      <NumberField label={words.length} unit={forms.units.cm} {...at("length")} />
      <NumberField label={words.fill} unit={forms.units.mL} {...at("fill")} />
      <NumberField label={words.most} unit={forms.units.mL} {...at("most")} />
    </>
  );
}
