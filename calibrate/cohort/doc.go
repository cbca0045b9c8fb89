// Package cohort fits many athletes over shared races at once: what runners of a field
// are like, how much slower each race runs than its profile says, and each athlete's
// numbers under both.
//
// # Model
//
// For athlete i on edition e (one running of a race) of course c,
//
//	ln T = m(P60, k, κ; ground) + xβ + u_c + v_e + w_ic + f_i(date) + ε
//
// with m the closed form of package effort for the running work of the ground (run all
// the way, fade shape 1, the fade held at the prior's median), and
//
//	ln P60, ln k, ln κ   normal over athletes, correlated; the mean of ln P60 moves with
//	                     the distances that an athlete chooses
//	xβ                   mean effect of courses by log distance and ascent per metre: what
//	                     the model misses of all such races
//	u_c, v_e             effects of the course and of the edition (weather, snow, a changed
//	                     route), Student's t
//	w_ic                 what one athlete makes of one course, time and again
//	f_i                  the athlete's fitness, an Ornstein-Uhlenbeck process in time
//	ε                    one race, Student's t, its scale growing with the duration
//
// u is positive where a course runs slower than its distance and ascent say. The model is
// [our own]; mixed models with crossed effects are in Pinheiro & Bates 2000,
// Mixed-Effects Models in S and S-PLUS, and the mean of an athlete's own covariates as a
// predictor of the athlete's level is Mundlak 1978, Econometrica 46:69 (both from memory).
//
// # Method
//
// Empirical Bayes: the athletes are integrated out, each a dense block of its own
// results; courses and editions are solved for by conjugate gradients with a block for
// each course as preconditioner, or exactly if they are few; the spreads are those of an
// EM iteration for the restricted likelihood under weak priors, with posterior spreads of
// the effects from exact draws by perturbing and solving (Papandreou & Yuille 2010,
// NIPS 23, from memory). The errors' weights are those of a variational Student t.
//
// # What it is not for
//
// Finish times cannot part the endurance exponent from the fade; the fade stays the
// prior's. A course effect does not say why a course is slow. Nothing here judges a
// runner's health or readiness.
package cohort
