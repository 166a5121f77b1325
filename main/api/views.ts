/** What the settings and customers' procedures answer with, for the screens as types. */

export type { CureParts } from '../domain/cure/index.ts'
export type { Condition, Finish } from '../domain/shop/words.ts'
export type { SizeClass } from '../domain/vehicle/index.ts'
export type { AppliedDraft, AppliedEntryView, AppliedView, Zone } from '../services/applied/appliedViews.ts'
export type * from '../services/board/views.ts'
export type * from '../services/booking/views.ts'
export type {
  BayConditionsView,
  ConditionsView,
  ImportPreview,
  ImportReport,
  ReadingView,
} from '../services/cure/conditionViews.ts'
export type { MailView } from '../services/desk/mailSettings.ts'
export type { ShopView } from '../services/desk/shopView.ts'
export type * from '../services/floor/views.ts'
export type { JobCureView, JobLayerView } from '../services/job/jobCureViews.ts'
export type { NoticeView } from '../services/job/notices.ts'
export type * from '../services/job/views.ts'
export type * from '../services/morning/views.ts'
export type { CustomerView, PastJobView, VehicleView } from '../services/records/customers.ts'
export type { FoundCustomer } from '../services/records/customersFind.ts'
export type * from '../services/reminders/views.ts'
export type { BayView } from '../services/setUp/bays.ts'
export type { CrewView } from '../services/setUp/crew.ts'
export type { ExceptionView } from '../services/setUp/hours.ts'
export type { ProductView } from '../services/setUp/products.ts'
export type { TreatmentView } from '../services/setUp/treatments.ts'
export type * from '../services/shelf/views/advice.ts'
export type * from '../services/shelf/views/closeOfDay.ts'
export type * from '../services/shelf/views/lots.ts'
export type * from '../services/shelf/views/orders.ts'
export type * from '../services/shelf/views/product.ts'
export type * from '../services/shelf/views/safety.ts'
export type * from '../services/shelf/views/value.ts'
export type * from '../services/upkeep/views.ts'
