/*
 * A stand-in for CoolProp's shared library, for tests of the binding. It exports the functions of CoolPropLib.h that the binding calls and
 * computes an invented fluid in closed form, so that every number can be checked. It counts live states, notices calls that overlap and
 * can be built with another width of C long, without one function, or without any.
 *
 * The fluid, with T0 = 273.15 K:
 *   saturation   ps(T) = p0 exp(B (1/T0 - 1/T))
 *   liquid       rho = rho0 - a (T - T0) + c (p - ps),  h = cl (T - T0) + h0,      s = cl ln(T/T0) + s0
 *   vapor, gas   rho = p M / (R T),                     h = cp (T - T0) + L + h0,  s = cp ln(T/T0) + L/T0 - R/M ln(p/p0) + s0
 * Blends: Raoult's law; specific volume and caloric properties of a phase are mass-weighted.
 */
#include <math.h>
#include <sched.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#ifndef CLONG
#define CLONG long
#endif

#if defined(__GNUC__)
#define EXPORT __attribute__((visibility("default")))
#else
#define EXPORT __declspec(dllexport)
#endif

#ifdef STANDIN_FOREIGN

EXPORT int something_else(void) { return 42; }

#else

#define MAX_STATES 4096
#define MAX_COMPONENTS 4
#define R 8.314462618
#define T0 273.15
#define LIQUID_COMPRESSION 1e-5
#define LIQUID_DENSITY_SLOPE 2.0

enum { PAIR_BASE = 100, QT = PAIR_BASE, PQ, PT, DT, DU, HP, PS, PAIR_END };
enum { PHASE_LIQUID = 0, PHASE_SUPERCRITICAL_GAS = 2, PHASE_GAS = 5, PHASE_TWOPHASE = 6 };

static const char *pair_names[] = {"QT_INPUTS", "PQ_INPUTS", "PT_INPUTS", "DmassT_INPUTS", "DmassUmass_INPUTS", "HmassP_INPUTS", "PSmass_INPUTS"};

static const char *parameter_names[] = {
    "T", "P", "Dmass", "Hmass", "Smass", "Phase", "molar_mass", "T_critical", "p_critical", "rhomass_critical", "T_reducing", "rhomolar_reducing", "rhomass_reducing",
    "T_min", "T_max", "P_max", "T_triple", "Cvmass", "Cpmass", "speed_of_sound", "viscosity"};
enum { T_, P_, D_, H_, S_, PHASE_, MM_, TC_, PC_, RHOC_, TR_, RHOMOLR_, RHOR_, TMIN_, TMAX_, PMAX_, TTRIPLE_, CV_, CP_, W_, V_, PARAMETERS };

typedef struct {
    const char *name;
    double M, Tc, Tmin, p0, B, rho0, cl, cp, L, h0, s0;
    int spurious, no_viscosity, huge_enthalpy;
} fluid_t;

static const fluid_t fluids[] = {
    {"R901", 0.100, 400, 200, 3e5, 2500, 1000, 1500, 900, 200e3, 12345.6, 78.9, 0, 0, 0},
    {"R902", 0.050, 360, 190, 8e5, 2300, 950, 1600, 950, 260e3, -4321.0, -65.4, 0, 0, 0},
    {"R903", 0.088, 230, 100, 2e7, 1700, 900, 1100, 800, 120e3, 50000.0, 500.0, 0, 0, 0},
    {"R904", 0.100, 400, 200, 3e5, 2500, 1000, 1500, 900, 200e3, 12345.6, 78.9, 0, 1, 0},
    {"R905", 0.100, 400, 200, 3e5, 2500, 1000, 1500, 900, 200e3, 12345.6, 78.9, 0, 0, 1},
    {"R906", 0.100, 400, 200, 3e5, 2500, 1000, 1500, 900, 200e3, 12345.6, 78.9, 1, 0, 0},
    {"R907", 0.100, 400, 273.15000000000003, 3e5, 2500, 1000, 1500, 900, 200e3, 12345.6, 78.9, 0, 0, 0},
    {"R499", 0.075, 380, 200, 5e5, 2400, 980, 1550, 920, 230e3, 0.0, 0.0, 0, 0, 0},
};

typedef struct {
    int used, n, imposed, ready, phase;
    const fluid_t *f[MAX_COMPONENTS];
    double z[MAX_COMPONENTS], x[MAX_COMPONENTS], y[MAX_COMPONENTS];
    double T, p, Q, rho, h, s, rhoL, hL, sL, rhoV, hV, sV;
} state_t;

static state_t states[MAX_STATES];
static int live, inside, overlaps;

/* Above 32 bits where long is wider, so that a handle cut to 32 bits is noticed. */
static CLONG first_handle(void) { return sizeof(CLONG) == 8 ? (CLONG)5000000000LL : (CLONG)7; }

static void enter(void) {
    if (__atomic_add_fetch(&inside, 1, __ATOMIC_SEQ_CST) > 1) __atomic_add_fetch(&overlaps, 1, __ATOMIC_SEQ_CST);
    sched_yield();
}
static void leave(void) { __atomic_sub_fetch(&inside, 1, __ATOMIC_SEQ_CST); }

EXPORT int standin_live_states(void) { return __atomic_load_n(&live, __ATOMIC_SEQ_CST); }
EXPORT int standin_overlaps(void) { return __atomic_load_n(&overlaps, __ATOMIC_SEQ_CST); }

static void fail(CLONG *errcode, char *buffer, CLONG length, const char *text) {
    if (strlen(text) < (size_t)length) {
        *errcode = 1;
        strcpy(buffer, text);
    } else {
        *errcode = 2;
    }
}

static state_t *get(CLONG handle, CLONG *errcode, char *buffer, CLONG length) {
    CLONG i = handle - first_handle();
    if (i < 0 || i >= MAX_STATES || !states[i].used) {
        fail(errcode, buffer, length, "HandleError: could not get handle");
        return NULL;
    }
    return &states[i];
}

static double molar_mass(const state_t *s, const double *x) {
    double m = 0;
    for (int i = 0; i < s->n; i++) m += x[i] * s->f[i]->M;
    return m;
}
static double reducing_temperature(const state_t *s) {
    double t = 0;
    for (int i = 0; i < s->n; i++) t += s->z[i] * s->f[i]->Tc;
    return t;
}
static double ps(const fluid_t *f, double T) { return f->p0 * exp(f->B * (1 / T0 - 1 / T)); }
static double bubble(const state_t *s, const double *x, double T) {
    double p = 0;
    for (int i = 0; i < s->n; i++) p += x[i] * ps(s->f[i], T);
    return p;
}
static double dew(const state_t *s, double T) {
    double sum = 0;
    for (int i = 0; i < s->n; i++) sum += s->z[i] / ps(s->f[i], T);
    return 1 / sum;
}

static double liquid_density(const state_t *s, const double *x, double T, double p) {
    double v = 0, m = molar_mass(s, x);
    for (int i = 0; i < s->n; i++) v += x[i] * s->f[i]->M / m / (s->f[i]->rho0 - LIQUID_DENSITY_SLOPE * (T - T0));
    return 1 / v + LIQUID_COMPRESSION * (p - bubble(s, x, T));
}
static double gas_density(const state_t *s, const double *x, double T, double p) { return p * molar_mass(s, x) / (R * T); }

static double enthalpy(const state_t *s, const double *x, double T, int vapor) {
    double h = 0, m = molar_mass(s, x);
    for (int i = 0; i < s->n; i++) {
        const fluid_t *f = s->f[i];
        h += x[i] * f->M / m * ((vapor ? f->cp : f->cl) * (T - T0) + (vapor ? f->L : 0) + f->h0);
    }
    return s->n == 1 && s->f[0]->huge_enthalpy ? HUGE_VAL : h;
}
static double entropy(const state_t *s, const double *x, double T, double p, int vapor) {
    double e = 0, m = molar_mass(s, x);
    for (int i = 0; i < s->n; i++) {
        const fluid_t *f = s->f[i];
        double part = (vapor ? f->cp : f->cl) * log(T / T0) + f->s0;
        if (vapor) part += f->L / T0 - R / f->M * log(p / f->p0);
        e += x[i] * f->M / m * part;
    }
    return e;
}

static void homogeneous(state_t *s, double T, double p, int vapor) {
    s->T = T;
    s->p = p;
    s->Q = -1;
    s->rho = vapor ? gas_density(s, s->z, T, p) : liquid_density(s, s->z, T, p);
    s->h = enthalpy(s, s->z, T, vapor);
    s->s = entropy(s, s->z, T, p, vapor);
    s->phase = vapor ? (s->n == 1 && T > s->f[0]->Tc ? PHASE_SUPERCRITICAL_GAS : PHASE_GAS) : PHASE_LIQUID;
}

/* Rachford and Rice's sum for Raoult's law: zero at equilibrium. */
static double rachford(const state_t *s, double T, double p, double Q) {
    double g = 0;
    for (int i = 0; i < s->n; i++) {
        double k = ps(s->f[i], T) / p;
        g += s->z[i] * (k - 1) / (1 + Q * (k - 1));
    }
    return g;
}

static void two_phase(state_t *s, double T, double p, double Q) {
    double mL, mV, M, beta;
    s->T = T;
    s->p = p;
    s->Q = Q;
    for (int i = 0; i < s->n; i++) {
        double k = ps(s->f[i], T) / p;
        s->x[i] = s->z[i] / (1 + Q * (k - 1));
        s->y[i] = k * s->x[i];
    }
    s->rhoL = liquid_density(s, s->x, T, p);
    s->rhoV = gas_density(s, s->y, T, p);
    s->hL = enthalpy(s, s->x, T, 0);
    s->hV = enthalpy(s, s->y, T, 1);
    s->sL = entropy(s, s->x, T, p, 0);
    s->sV = entropy(s, s->y, T, p, 1);
    mL = molar_mass(s, s->x);
    mV = molar_mass(s, s->y);
    M = (1 - Q) * mL + Q * mV;
    beta = Q * mV / M;
    s->rho = 1 / ((1 - beta) / s->rhoL + beta / s->rhoV);
    s->h = (1 - beta) * s->hL + beta * s->hV;
    s->s = (1 - beta) * s->sL + beta * s->sV;
    s->phase = PHASE_TWOPHASE;
}

static double pressure_of_quality(const state_t *s, double T, double Q) {
    double low = dew(s, T), high = bubble(s, s->z, T);
    for (int i = 0; i < 200; i++) {
        double mid = 0.5 * (low + high);
        if (rachford(s, T, mid, Q) > 0) low = mid; else high = mid;
    }
    return Q == 0 ? bubble(s, s->z, T) : Q == 1 ? dew(s, T) : 0.5 * (low + high);
}

static double temperature_of_quality(const state_t *s, double p, double Q) {
    double low = 50, high = 1000;
    for (int i = 0; i < 200; i++) {
        double mid = 0.5 * (low + high);
        if (pressure_of_quality(s, mid, Q) < p) low = mid; else high = mid;
    }
    return 0.5 * (low + high);
}

static double saturation_limit(const state_t *s) { return s->n == 1 ? s->f[0]->Tc : 0.975 * reducing_temperature(s); }

/* One component at a temperature and density: two phases where the density lies between them. */
static void equilibrium(state_t *s, double T, double rho) {
    if (T < s->f[0]->Tc) {
        double p = ps(s->f[0], T), l = liquid_density(s, s->z, T, p), v = gas_density(s, s->z, T, p);
        if (rho >= l) {
            homogeneous(s, T, p + (rho - l) / LIQUID_COMPRESSION, 0);
            return;
        }
        if (rho > v) {
            two_phase(s, T, p, (1 / rho - 1 / l) / (1 / v - 1 / l));
            return;
        }
    }
    homogeneous(s, T, rho * R * T / s->f[0]->M, 1);
}

static const char *update(state_t *s, CLONG pair, double a, double b) {
    if (pair == QT) {
        if (b > saturation_limit(s) || b < s->f[0]->Tmin - 1e-9) return "Error: Temperature to QT_flash must be on the saturation curve";
        two_phase(s, b, pressure_of_quality(s, b, a), a);
        return NULL;
    }
    if (pair == PQ) {
        double T = temperature_of_quality(s, a, b);
        if (T > saturation_limit(s) * (1 + 1e-12)) return "Error: p is above the saturation curve";
        two_phase(s, T, a, b);
        return NULL;
    }
    if (pair == PT) {
        if (s->imposed) {
            homogeneous(s, b, a, s->imposed == 2);
        } else if (s->n == 1) {
            double p = b < s->f[0]->Tc ? ps(s->f[0], b) : HUGE_VAL;
            if (fabs(a / p - 1) < 1e-6) return "Error: Saturation pressure corresponding to T is within 1e-4 % of given p";
            homogeneous(s, b, a, a < p);
        } else if (b > saturation_limit(s) || a < dew(s, b) || a > bubble(s, s->z, b)) {
            homogeneous(s, b, a, b > saturation_limit(s) || a < dew(s, b));
        } else {
            return "Error: two-phase PT flash is left out of the stand-in";
        }
        if (s->n == 1 && s->f[0]->spurious) s->rho = 500;
        return NULL;
    }
    if (pair == DT && s->imposed) {
        if (s->imposed == 2) {
            homogeneous(s, b, a * R * b / molar_mass(s, s->z), 1);
        } else {
            double p = bubble(s, s->z, b);
            homogeneous(s, b, p + (a - liquid_density(s, s->z, b, p)) / LIQUID_COMPRESSION, 0);
        }
        return NULL;
    }
    if (s->n > 1) return "Error: NotImplementedError: this flash does not support mixtures";
    if (pair == DT) {
        equilibrium(s, b, a);
        return NULL;
    }
    if (pair == DU) {
        double low = s->f[0]->Tmin, high = 600;
        for (int i = 0; i < 200; i++) {
            double mid = 0.5 * (low + high);
            equilibrium(s, mid, a);
            if (s->h - s->p / a < b) low = mid; else high = mid;
        }
        if (high == 600 || low == s->f[0]->Tmin) return "Error: no temperature has this energy";
        return NULL;
    }
    if (pair == HP || pair == PS) {
        const fluid_t *f = s->f[0];
        double p = pair == HP ? b : a, value = pair == HP ? a : b, T, l, v;
        if (p < ps(f, f->Tmin) || p > ps(f, f->Tc)) return "Error: p is outside the range of this flash";
        T = temperature_of_quality(s, p, 0);
        two_phase(s, T, p, 0);
        l = pair == HP ? s->hL : s->sL;
        v = pair == HP ? s->hV : s->sV;
        if (value < l) {
            homogeneous(s, pair == HP ? T0 + (value - f->h0) / f->cl : T0 * exp((value - f->s0) / f->cl), p, 0);
        } else if (value > v) {
            homogeneous(s, pair == HP ? T0 + (value - f->h0 - f->L) / f->cp
                                      : T0 * exp((value - f->s0 - f->L / T0 + R / f->M * log(p / f->p0)) / f->cp), p, 1);
        } else {
            two_phase(s, T, p, (value - l) / (v - l));
        }
        return NULL;
    }
    return "Error: unknown pair of inputs";
}

EXPORT CLONG get_param_index(const char *name) {
    for (int i = 0; i < PARAMETERS; i++) if (!strcmp(name, parameter_names[i])) return i + 1;
    return -1;
}

EXPORT CLONG get_input_pair_index(const char *name) {
    for (int i = 0; i < PAIR_END - PAIR_BASE; i++) if (!strcmp(name, pair_names[i])) return PAIR_BASE + i;
    return -1;
}

EXPORT CLONG get_global_param_string(const char *name, char *output, int n) {
    const char *text = "0.0-standin";
    if (strcmp(name, "version") || strlen(text) >= (size_t)n) return 0;
    strcpy(output, text);
    return 1;
}

EXPORT CLONG get_fluid_param_string(const char *fluid, const char *name, char *output, int n) {
    if (strcmp(fluid, "R901") || strcmp(name, "BibTeX-EOS") || n < 32) return 0;
    strcpy(output, "Nobody-2000");
    return 1;
}

EXPORT CLONG AbstractState_factory(const char *backend, const char *names, CLONG *errcode, char *buffer, const CLONG length) {
    char copy[512];
    state_t made;
    CLONG handle = -1;
    enter();
    *errcode = 0;
    memset(&made, 0, sizeof made);
    if (strcmp(backend, "HEOS")) {
        fail(errcode, buffer, length, "Error: unknown backend");
    } else {
        snprintf(copy, sizeof copy, "%s", strcmp(names, "R499.mix") ? names : "R901&R902");
        for (char *name = strtok(copy, "&"); name && !*errcode; name = strtok(NULL, "&")) {
            const fluid_t *found = NULL;
            for (size_t i = 0; i < sizeof fluids / sizeof *fluids; i++) if (!strcmp(name, fluids[i].name)) found = &fluids[i];
            if (!found || made.n == MAX_COMPONENTS) {
                char text[640];
                snprintf(text, sizeof text, "Error: key [%s] was not found in string_to_index_map in JSONFluidLibrary", name);
                fail(errcode, buffer, length, text);
            } else {
                made.f[made.n++] = found;
            }
        }
        if (!*errcode) {
            for (int i = 0; i < made.n; i++) made.z[i] = 1.0 / made.n;
            for (int i = 0; i < MAX_STATES; i++) {
                if (!states[i].used) {
                    made.used = 1;
                    states[i] = made;
                    handle = first_handle() + i;
                    __atomic_add_fetch(&live, 1, __ATOMIC_SEQ_CST);
                    break;
                }
            }
        }
    }
    leave();
    return handle;
}

EXPORT void AbstractState_free(const CLONG handle, CLONG *errcode, char *buffer, const CLONG length) {
    state_t *s;
    enter();
    *errcode = 0;
    if ((s = get(handle, errcode, buffer, length))) {
        s->used = 0;
        __atomic_sub_fetch(&live, 1, __ATOMIC_SEQ_CST);
    }
    leave();
}

EXPORT void AbstractState_fluid_names(const CLONG handle, char *names, CLONG *errcode, char *buffer, const CLONG length) {
    state_t *s;
    enter();
    *errcode = 0;
    if ((s = get(handle, errcode, buffer, length))) {
        names[0] = 0;
        for (int i = 0; i < s->n; i++) {
            if (i) strcat(names, ",");
            strcat(names, s->f[i]->name);
        }
    }
    leave();
}

EXPORT void AbstractState_set_fractions(const CLONG handle, const double *fractions, const CLONG n, CLONG *errcode, char *buffer, const CLONG length) {
    state_t *s;
    enter();
    *errcode = 0;
    if ((s = get(handle, errcode, buffer, length))) {
        if (n != s->n) fail(errcode, buffer, length, "Error: size of mole fraction vector does not equal that of component vector");
        else memcpy(s->z, fractions, (size_t)n * sizeof *fractions);
    }
    leave();
}

static void copy_fractions(const state_t *s, const double *from, double *to, CLONG room, CLONG *n, CLONG *errcode, char *buffer, CLONG length) {
    *n = s->n;
    if (s->n > room) fail(errcode, buffer, length, "Error: length of array is greater than allocated buffer length");
    else memcpy(to, from, (size_t)s->n * sizeof *from);
}

EXPORT void AbstractState_get_mole_fractions(const CLONG handle, double *fractions, const CLONG room, CLONG *n, CLONG *errcode, char *buffer,
                                             const CLONG length) {
    state_t *s;
    enter();
    *errcode = 0;
    if ((s = get(handle, errcode, buffer, length))) copy_fractions(s, s->z, fractions, room, n, errcode, buffer, length);
    leave();
}

EXPORT void AbstractState_get_mole_fractions_satState(const CLONG handle, const char *side, double *fractions, const CLONG room, CLONG *n,
                                                      CLONG *errcode, char *buffer, const CLONG length) {
    state_t *s;
    enter();
    *errcode = 0;
    if ((s = get(handle, errcode, buffer, length))) {
        if (s->phase != PHASE_TWOPHASE) fail(errcode, buffer, length, "Error: only saturated states have saturated mole fractions");
        else copy_fractions(s, strcmp(side, "liquid") ? s->y : s->x, fractions, room, n, errcode, buffer, length);
    }
    leave();
}

EXPORT void AbstractState_update(const CLONG handle, const CLONG pair, const double a, const double b, CLONG *errcode, char *buffer,
                                 const CLONG length) {
    state_t *s;
    enter();
    *errcode = 0;
    if ((s = get(handle, errcode, buffer, length))) {
        const char *text = update(s, pair, a, b);
        s->ready = !text;
        if (text) fail(errcode, buffer, length, text);
    }
    leave();
}

EXPORT void AbstractState_specify_phase(const CLONG handle, const char *phase, CLONG *errcode, char *buffer, const CLONG length) {
    state_t *s;
    enter();
    *errcode = 0;
    if ((s = get(handle, errcode, buffer, length))) {
        if (!strcmp(phase, "phase_liquid")) s->imposed = 1;
        else if (!strcmp(phase, "phase_gas")) s->imposed = 2;
        else fail(errcode, buffer, length, "Error: unknown phase");
    }
    leave();
}

EXPORT void AbstractState_unspecify_phase(const CLONG handle, CLONG *errcode, char *buffer, const CLONG length) {
    state_t *s;
    enter();
    *errcode = 0;
    if ((s = get(handle, errcode, buffer, length))) s->imposed = 0;
    leave();
}

static double output(const state_t *s, CLONG parameter, const char **text) {
    const fluid_t *f = s->f[0];
    double Tr = reducing_temperature(s), lowest = 0;
    for (int i = 0; i < s->n; i++) if (s->f[i]->Tmin > lowest) lowest = s->f[i]->Tmin;
    switch (parameter - 1) {
        case MM_: return molar_mass(s, s->z);
        case TC_: case PC_: case RHOC_:
            if (s->n > 1) {
                *text = "Error: critical point finding routine found 2 critical points";
                return HUGE_VAL;
            }
            return parameter - 1 == TC_ ? f->Tc : parameter - 1 == PC_ ? ps(f, f->Tc) : 450;
        case TR_: return Tr;
        case RHOMOLR_: return 450 / molar_mass(s, s->z);
        case RHOR_: {
            /* As CoolProp: the name is known, but no fluid answers it. */
            static char refusal[96];
            snprintf(refusal, sizeof refusal, "This input [%d: \"rhomass_reducing\"] is not valid for trivial_keyed_output", RHOR_ + 1);
            *text = refusal;
            return HUGE_VAL;
        }
        case TMIN_: case TTRIPLE_: return lowest;
        case TMAX_: return 600;
        case PMAX_: return 5e7;
    }
    if (!s->ready) {
        *text = "Error: the state has not been updated";
        return HUGE_VAL;
    }
    switch (parameter - 1) {
        case T_: return s->T;
        case P_: return s->p;
        case D_: return s->rho;
        case H_: return s->h;
        case S_: return s->s;
        case PHASE_: return s->phase;
        case CV_: return s->phase == PHASE_LIQUID ? f->cl : f->cp - R / f->M;
        case CP_: return s->phase == PHASE_LIQUID ? f->cl : f->cp;
        case W_: return s->phase == PHASE_LIQUID ? 600 : 150;
        case V_:
            if (f->no_viscosity) {
                *text = "Error: Viscosity model is not available for this fluid";
                return HUGE_VAL;
            }
            return s->Q == 0 ? 2e-4 : 1.2e-5;
    }
    *text = "Error: unknown parameter";
    return HUGE_VAL;
}

EXPORT double AbstractState_keyed_output(const CLONG handle, const CLONG parameter, CLONG *errcode, char *buffer, const CLONG length) {
    double value = HUGE_VAL;
    state_t *s;
    enter();
    *errcode = 0;
    if ((s = get(handle, errcode, buffer, length))) {
        const char *text = NULL;
        value = output(s, parameter, &text);
        if (text) fail(errcode, buffer, length, text);
    }
    leave();
    return value;
}

#ifndef STANDIN_TOO_OLD
EXPORT double AbstractState_keyed_output_satState(const CLONG handle, const char *side, const CLONG parameter, CLONG *errcode, char *buffer,
                                                  const CLONG length) {
    double value = HUGE_VAL;
    state_t *s;
    enter();
    *errcode = 0;
    if ((s = get(handle, errcode, buffer, length))) {
        int liquid = !strcmp(side, "liquid");
        if (s->phase != PHASE_TWOPHASE) fail(errcode, buffer, length, "Error: only saturated states have saturated outputs");
        else if (parameter - 1 == D_) value = liquid ? s->rhoL : s->rhoV;
        else if (parameter - 1 == H_) value = liquid ? s->hL : s->hV;
        else if (parameter - 1 == S_) value = liquid ? s->sL : s->sV;
        else fail(errcode, buffer, length, "Error: unknown saturated output");
    }
    leave();
    return value;
}
#endif

EXPORT double AbstractState_first_partial_deriv(const CLONG handle, const CLONG of, const CLONG by, const CLONG at, CLONG *errcode, char *buffer,
                                                const CLONG length) {
    double value = HUGE_VAL;
    state_t *s;
    enter();
    *errcode = 0;
    if ((s = get(handle, errcode, buffer, length))) {
        double Rs = R / molar_mass(s, s->z);
        int liquid = s->phase == PHASE_LIQUID;
        if (of - 1 != P_) {
            fail(errcode, buffer, length, "Error: the stand-in differentiates pressure only");
        } else if (by - 1 == D_ && at - 1 == T_) {
            int between = s->T < saturation_limit(s) && s->rho > 1.5 * gas_density(s, s->z, s->T, dew(s, s->T))
                && s->rho < 0.9 * liquid_density(s, s->z, s->T, bubble(s, s->z, s->T));
            value = between ? -1.0 : liquid ? 1 / LIQUID_COMPRESSION : Rs * s->T;
        } else if (by - 1 == T_ && at - 1 == D_) {
            value = liquid ? ps(s->f[0], s->T) * s->f[0]->B / (s->T * s->T) + LIQUID_DENSITY_SLOPE / LIQUID_COMPRESSION : s->rho * Rs;
        } else {
            fail(errcode, buffer, length, "Error: unknown derivative");
        }
    }
    leave();
    return value;
}

#endif
