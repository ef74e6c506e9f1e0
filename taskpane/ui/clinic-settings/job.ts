import { fetched, type Job } from "../pane/define-job";

export const clinicSettings: Job = {
  key: "clinicSettings",
  label: "Clinic settings",
  lead: "The numbers your clinic works with, and who agreed them.",
  Content: fetched(
    async () => (await import(/* webpackChunkName: "clinic-settings" */ "./ClinicSettings")).ClinicSettings,
  ),
};
