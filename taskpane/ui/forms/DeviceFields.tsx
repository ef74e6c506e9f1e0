import { lists } from "../../actions/caseload/lists";
import type { DeviceField } from "../../actions/caseload/new-device";
import { forms } from "../../texts/forms";
import { NumberField, TextField, WordField } from "./Field";
import type { At } from "./useForm";

interface Props {
  readonly at: (field: DeviceField) => At;
  readonly applies: (field: DeviceField) => boolean;
}

/** The tube that is in: the same fields in every form. */
export function DeviceFields({ at, applies }: Props) {
  return (
    <>
      <WordField of={lists["Held by"]} {...at("heldBy")} />
      <WordField of={lists["Known from"]} {...at("knownFrom")} />
      <WordField of={lists.Shape} {...at("shape")} />
      <TextField {...at("size")} />
      {applies("length") && <NumberField unit={forms.units.cm} {...at("length")} />}
      {applies("fill") && <NumberField unit={forms.units.mL} {...at("fill")} />}
      {applies("most") && <NumberField unit={forms.units.mL} {...at("most")} />}
    </>
  );
}
