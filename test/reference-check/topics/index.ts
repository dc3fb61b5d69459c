import * as iso286ItGrades from './iso286_it_grades';
import * as iso286FundamentalDeviations from './iso286_fundamental_deviations';
import * as iso286Limits from './iso286_limits';
import * as thermal from './thermal';
import * as quantiles from './quantiles';
import * as drift from './drift';
import * as controlChartConstants from './control_chart_constants';
import * as chartsIndividuals from './charts_individuals';
import * as chartsSubgroups from './charts_subgroups';
import * as chartsEwmaCusum from './charts_ewma_cusum';
import * as chartsRules from './charts_rules';
import * as precontrol from './precontrol';
import * as capability from './capability';
import * as gaugeRr from './gauge_rr';
import * as biasLinearity from './bias_linearity';
import * as cutLog from './cut_log';
import * as pairing from './pairing';
import * as strdUnivariate from './strd_univariate';
import * as descriptiveExtra from './descriptive_extra';
import * as normality from './normality';
import * as outliersGrubbs from './outliers_grubbs';
import * as strdAnova from './strd_anova';
import * as strdRegression from './strd_regression';
import * as toleranceIntervals from './tolerance_intervals';
import * as conformity from './conformity';
import * as uncertaintyGum from './uncertainty_gum';
import * as uncertaintyMonteCarlo from './uncertainty_monte_carlo';
import * as formTwoPoint from './form_two_point';
import * as pressFit from './press_fit';
import * as gland from './gland';
import * as steamSaturation from './steam_saturation';
import * as threads from './threads';
import * as derivedDimensions from './derived_dimensions';
import * as chain from './chain';
import type { Topic } from './topic';
import * as unitParse from './unit_parse';

/** Every topic the check can answer, one line each, in the order of the file names. */
export const topics: readonly Topic[] = [
  unitParse,
  iso286ItGrades,
  iso286FundamentalDeviations,
  iso286Limits,
  thermal,
  quantiles,
  drift,
  controlChartConstants,
  chartsIndividuals,
  chartsSubgroups,
  chartsEwmaCusum,
  chartsRules,
  precontrol,
  capability,
  gaugeRr,
  biasLinearity,
  cutLog,
  pairing,
  strdUnivariate,
  descriptiveExtra,
  normality,
  outliersGrubbs,
  strdAnova,
  strdRegression,
  toleranceIntervals,
  conformity,
  uncertaintyGum,
  uncertaintyMonteCarlo,
  formTwoPoint,
  pressFit,
  gland,
  steamSaturation,
  threads,
  derivedDimensions,
  chain,
];
