/** What the settings and customers' procedures answer with, for the screens as types. */

export type { AppliedDraft, AppliedEntryView, AppliedView, Zone } from '../services/applied/appliedViews.ts'
export type { BayView } from '../services/bays.ts'
export type { CrewView } from '../services/crew.ts'
export type {
  BayConditionsView,
  ConditionsView,
  ImportPreview,
  ImportReport,
  ReadingView,
  SensorView,
} from '../services/cure/conditionViews.ts'
export type { HeatingView, JobCureView, LayerView, SlipView } from '../services/cure/jobCureViews.ts'
export type { NoticeView } from '../services/cure/notices.ts'
export type { CustomerView, VehicleView, VisitView } from '../services/customers.ts'
export type { FoundCustomer } from '../services/customersFind.ts'
export type { ExceptionView } from '../services/hours.ts'
export type { ProductView } from '../services/products.ts'
export type { ShopView } from '../services/shopView.ts'
export type { TreatmentView } from '../services/treatments.ts'
