package rasterfit.app.rule;

import java.util.List;

/** All criteria, and the intents that weigh them. */
record CriteriaAnswer(List<CriterionAnswer> items, List<IntentAnswer> intents) {}
