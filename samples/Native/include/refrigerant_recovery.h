/*
 * Refrigerant.Recovery for programs that are not .NET: refrigerant properties, how full a cylinder may be, the level to pull down to,
 * and what is left in the appliance while the job runs.
 *
 * Units     SI throughout: K, Pa, kg, m3, s, J, W. Pressures are absolute unless the name says gauge. Text has SI units too.
 * Results   Every function returns an rr_status and writes through its pointers only where that is RR_OK.
 *           rr_error_text() says in words what the last failed call of this thread objected to: the value and the range it may have.
 *           No exception and no NaN crosses this border.
 * Threads   Any function may be called from any thread at any time. A fluid may be used by many threads at once, an
 *           estimator or a simulation by one at a time.
 * Memory    The caller owns every struct and buffer. Text is UTF-8. A fluid lives as long as the process.
 *           A call that succeeds with a handle made before allocates nothing, except where its comment says so.
 * Process   Starts no thread that calls back. Once loaded it stays: dlclose is not supported.
 * Caution   Overfilled cylinders burst. These numbers do not replace the marks on the cylinder, a scale that was checked, a relief
 *           valve, a float switch or training: local codes and licensed practice govern.
 */
#ifndef REFRIGERANT_RECOVERY_H
#define REFRIGERANT_RECOVERY_H

#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Grows when a function or struct below changes in a way that a compiled program would notice. Compare with rr_interface_version(). */
#define RR_INTERFACE_VERSION 1

typedef int32_t rr_status;
enum {
    RR_OK = 0,
    RR_INVALID_ARGUMENT = 1,   /* a null pointer, or a value that cannot be right */
    RR_INVALID_HANDLE = 2,     /* a handle that was never made, or was freed */
    RR_UNKNOWN_FLUID = 3,      /* no refrigerant of that designation */
    RR_OUT_OF_RANGE = 4,       /* outside the validity range of the equation of state */
    RR_NOT_CONVERGED = 5,      /* an iteration reached its bound */
    RR_INTERNAL = 99           /* a defect of the library: please report the text */
};

int32_t rr_interface_version(void);

/* The library's version, such as "0.1.0"; lives as long as the process. */
const char *rr_version(void);

/*
 * Text of this thread's last failed call, cut to size and ended with a zero. Returns the bytes that all of it needs, the zero included;
 * buffer may be null where size is 0.
 */
int32_t rr_error_text(char *buffer, int32_t size);

/* ---- Refrigerants ---------------------------------------------------------------------------------------------------------------- */

/* A refrigerant. Zero is none. */
typedef int32_t rr_fluid;

/*
 * Finds a refrigerant by designation: "R-134a", "r410a". The same one has the same handle. The first call for a refrigerant builds its
 * tables and takes up to some tens of milliseconds; make it before the control loop starts. Allocates.
 */
rr_status rr_fluid_get(const char *designation, rr_fluid *fluid);

typedef struct {
    double molar_mass;                      /* kg/mol */
    double critical_temperature;            /* K */
    double critical_pressure;               /* Pa */
    double critical_density;                /* kg/m3 */
    double minimum_temperature;             /* K, of the equation of state */
    double maximum_temperature;             /* K */
    double maximum_pressure;                /* Pa */
    double maximum_saturation_temperature;  /* K, where the saturation curves end */
} rr_fluid_facts;

rr_status rr_fluid_facts_of(rr_fluid fluid, rr_fluid_facts *facts);

typedef enum { RR_UNDEFINED = 0, RR_LIQUID = 1, RR_VAPOR = 2, RR_SUPERCRITICAL = 3, RR_TWO_PHASE = 4 } rr_phase;

typedef struct {
    double temperature;     /* K */
    double pressure;        /* Pa, absolute */
    double density;         /* kg/m3 */
    double enthalpy;        /* J/kg; 200 kJ/kg in saturated liquid at 0 deg C */
    double entropy;         /* J/(kg K) */
    double vapor_fraction;  /* by mass, 0 to 1 */
    int32_t phase;          /* rr_phase; RR_UNDEFINED where there is none of it, and then the rest is 0 */
    int32_t reserved;
} rr_state;

typedef struct {
    rr_state bubble;        /* saturated liquid */
    rr_state dew;           /* saturated vapor */
} rr_saturation;

typedef struct {
    rr_state bulk;
    rr_state liquid;
    rr_state vapor;
    double liquid_volume_fraction;  /* of the vessel, 0 to 1 */
} rr_vessel;

rr_status rr_saturation_at_temperature(rr_fluid fluid, double temperature, rr_saturation *saturation);
rr_status rr_saturation_at_pressure(rr_fluid fluid, double pressure, rr_saturation *saturation);
rr_status rr_state_at(rr_fluid fluid, double temperature, double pressure, rr_state *state);

/* The content of a closed vessel at equilibrium; density is its mass over its internal volume, internal_energy in J/kg. */
rr_status rr_vessel_at_temperature(rr_fluid fluid, double temperature, double density, rr_vessel *vessel);
rr_status rr_vessel_at_energy(rr_fluid fluid, double density, double internal_energy, rr_vessel *vessel);

/* ---- Gauge and level ------------------------------------------------------------------------------------------------------------- */

/* Pressure of the standard atmosphere at an elevation in m; a gauge reads the absolute pressure less that of the air around it. */
rr_status rr_air_pressure(double elevation, double *pressure);

typedef struct {
    double required_pressure;       /* Pa, absolute */
    double required_gauge_reading;  /* Pa, gauge, on a gauge at this elevation; negative is a vacuum */
    int32_t cautions;               /* lines of text that ask for attention */
    int32_t reserved;
} rr_level;

/*
 * The level that 40 CFR 82 asks for before an appliance with this charge (kg) is opened for a major repair, or disposed of. Where the
 * place has other rules, they govern. text, which may be null, takes the rule and, a line each, the cautions; it is cut to text_size and
 * ended with a zero. Allocates.
 */
rr_status rr_required_level(rr_fluid fluid, double charge, double elevation, rr_level *level, char *text, int32_t text_size);

/* ---- Cylinders ------------------------------------------------------------------------------------------------------------------- */

typedef struct {
    const char *mark;          /* DOT mark, such as "4BA400"; null for a UN/ADR cylinder, which is known by its test pressure */
    double test_pressure;      /* Pa, gauge; read only where mark is null */
    double water_capacity;     /* kg, mark WC */
    double tare_weight;        /* kg, mark TW */
    double content;            /* kg already in it */
    const char *refrigerant;   /* designation of what it holds or last held; null where that is not known */
} rr_cylinder;

typedef struct {
    double maximum_fill;          /* kg of refrigerant */
    double maximum_gross_weight;  /* kg on the scale */
    double room;                  /* kg that may still be added */
    int32_t cautions;             /* lines of text that ask for attention */
    int32_t reserved;
} rr_fill_limit;

/*
 * How full a cylinder may be: the least of all rules. text, which may be null, takes the rule that governs and, a line each, the
 * cautions; it is cut to text_size and ended with a zero. Allocates.
 */
rr_status rr_fill_limit_of(rr_fluid fluid, const rr_cylinder *cylinder, rr_fill_limit *limit, char *text, int32_t text_size);

/* ---- Estimator: what is left, and how long still, while the job runs --------------------------------------------------------------- */

/* An estimator. It belongs to one thread at a time. */
typedef int32_t rr_estimator;

/* What was not read is NaN. */
typedef struct {
    double time;                      /* s, from any start */
    double suction_gauge_pressure;    /* Pa, gauge, at the machine's inlet */
    double gross_weight;              /* kg on the scale, cylinder included */
    double air_temperature;           /* K */
    double pipe_temperature;          /* K, of a pipe of the appliance */
    double discharge_gauge_pressure;  /* Pa, gauge, at the machine's outlet */
    int32_t machine_stopped;          /* 0 while it runs */
    int32_t valve_shut;               /* 0 while the valves between appliance and machine are open */
} rr_reading;

/* 5 %, median and 95 %. */
typedef struct {
    double low;
    double best;
    double high;
} rr_range;

enum {
    RR_COLD_POOL = 1 << 0,               /* liquid is left and far colder than the air: the gauge may reach the level over a pool */
    RR_MACHINE_UNDERPERFORMING = 1 << 1, /* or a scale that drifts: they look the same */
    RR_HOSE_BLOCKED = 1 << 2,
    RR_VALVE_CLOSED = 1 << 3,
    RR_SCALE_DISTURBED = 1 << 4,
    RR_GAUGE_INCONSISTENT = 1 << 5,
    RR_FOREIGN_GAS = 1 << 6,             /* air has come in */
    RR_LEVEL_OUT_OF_REACH = 1 << 7,
    RR_REST_SUGGESTED = 1 << 8,          /* ten seconds to a minute of rest would tell what the gauge cannot */
    RR_CYLINDER_CHANGED = 1 << 9,
    RR_TARE_CHANGED = 1 << 10,
    RR_LIQUID_TRANSFER = 1 << 11,
    RR_CHARGE_INCONSISTENT = 1 << 12,    /* with the charge that was told */
    RR_GAUGE_ABSOLUTE = 1 << 13,         /* the gauge seems to show absolute pressure and is not used */
    RR_WEIGHT_NET = 1 << 14,             /* the scale shows the content of the cylinder alone */
    RR_CYLINDER_INCONSISTENT = 1 << 15,  /* the cylinder did not weigh at first what was told */
    RR_CYLINDER_UNKNOWN = 1 << 16,       /* it is not one of the job's: its limit is not watched */
    RR_CYLINDER_LOSES_WEIGHT = 1 << 17,  /* refrigerant runs back, or leaks */
    RR_STANDING_PRESSURE_INCONSISTENT = 1 << 18 /* before anything was drawn: another refrigerant, air, or one that is warmer or colder than told */
};

typedef struct {
    double time;                        /* s from the first reading, of the last one used */
    rr_range remaining;                 /* kg in the appliance */
    rr_range total_charge;              /* kg that was in it at the start */
    rr_range time_to_level;             /* s with the machine running; zeros where has_time_to_level is 0 */
    rr_range final_gross_weight;        /* kg on the scale at the level */
    double level_reached_probability;   /* within four hours of running, 0 to 1 */
    double cylinder_limit_first;        /* probability that the cylinder is at its limit before that, 0 to 1 */
    double vapor_only;                  /* probability that no liquid is left, 0 to 1 */
    int32_t has_time_to_level;
    int32_t conditions;                 /* RR_COLD_POOL and the others, or'ed */
    int32_t not_used;                   /* 0 where every reading was used; else bits of UnusedReadings in the library's documentation */
    int32_t reserved;
} rr_estimate;

/*
 * An estimator for a planned job: a JSON document of the published schema (docs/schema/recovery-job.schema.json). oil_free is 1 where it is
 * known that there is no oil; oil that is not told makes the ranges wide. Small and quick: the controller's profile. Allocates.
 */
rr_status rr_estimator_start(const char *job, int32_t oil_free, rr_estimator *estimator);

/* Takes in a reading, ten a second or fewer. Never fails for what is in it. */
rr_status rr_estimator_add(rr_estimator estimator, const rr_reading *reading);

/* Does one slice of the work that waits, some 0.1 ms; more is 1 where there is still some. Call it as often as time allows. */
rr_status rr_estimator_work(rr_estimator estimator, int32_t *more);

rr_status rr_estimator_read(rr_estimator estimator, rr_estimate *estimate);
rr_status rr_estimator_free(rr_estimator estimator);

/* ---- Simulation: an appliance, machine and cylinder to try a controller on ---------------------------------------------------------- */

/* A simulation. It belongs to one thread at a time. */
typedef int32_t rr_simulation;

typedef struct {
    double inlet_opening;      /* of the valve at the machine's inlet, 0 to 1 */
    double heater_power;       /* W to the appliance's metal */
    double fan_factor;         /* heat exchange of the appliance with the air, 1 in still air */
    double cylinder_factor;    /* heat exchange around the cylinder, 1 in still air, a water bath some 50 */
    int32_t machine_stopped;   /* 0 while it runs */
    int32_t reserved;
} rr_inputs;

/* The machine runs, its inlet is open, nothing is heated or cooled. */
#define RR_INPUTS_RUNNING { 1.0, 0.0, 1.0, 1.0, 0, 0 }

typedef enum { RR_STEP_DONE = 0, RR_STEP_OUT_OF_RANGE = 1, RR_STEP_LIMIT = 2 } rr_step_outcome;

typedef struct {
    double time;                    /* s since the start */
    double appliance_pressure;      /* Pa, absolute */
    double appliance_temperature;   /* K, of the refrigerant */
    double appliance_mass;          /* kg, what its oil holds included */
    double liquid_mass;             /* kg in the appliance */
    double coldest_surface;         /* K, of the appliance's metal */
    double suction_pressure;        /* Pa, absolute, at the machine's inlet */
    double cylinder_pressure;       /* Pa, absolute */
    double cylinder_temperature;    /* K */
    double cylinder_mass;           /* kg */
    double discharge_temperature;   /* K, of the gas that leaves the compressor */
    double flow;                    /* kg/s out of the appliance */
    int32_t outcome;                /* rr_step_outcome: where it is not done, the simulation stands where that happened */
    int32_t reserved;
} rr_simulated;

/*
 * A simulated vapor recovery from the appliance of a job into its first cylinder; job is a JSON document of the published schema. Nothing in
 * it stops at a limit: that is the controller's task. Allocates; a step allocates nothing.
 */
rr_status rr_simulation_start(const char *job, rr_simulation *simulation);

/* Goes on for a time in s, up to a day, with what people do meanwhile. */
rr_status rr_simulation_step(rr_simulation simulation, double seconds, const rr_inputs *inputs, rr_simulated *state);

rr_status rr_simulation_free(rr_simulation simulation);

#ifdef __cplusplus
}
#endif

#endif
