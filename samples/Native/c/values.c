/* Every number of the interface in full precision, a line each: the tests compare them with the library's own. */
#include <stdio.h>
#include <stdlib.h>

#include "refrigerant_recovery.h"

static void require(rr_status status)
{
    if (status != RR_OK) {
        char text[512];
        rr_error_text(text, sizeof text);
        printf("error %d %s\n", (int)status, text);
        exit(EXIT_FAILURE);
    }
}

static void line(const char *name, int count, const double *values)
{
    printf("%s", name);
    for (int i = 0; i < count; i++) {
        printf(" %.17g", values[i]);
    }
    printf("\n");
}

static void state(const char *name, const rr_state *s)
{
    line(name, 7, (double[]){ s->temperature, s->pressure, s->density, s->enthalpy, s->entropy, s->vapor_fraction, s->phase });
}

static void lines(char *text)
{
    for (char *c = text; *c != 0; c++) {
        *c = *c == '\n' ? '|' : *c;
    }
    printf("text %s\n", text);
}

static void failure(const char *name, rr_status status)
{
    char text[512];
    int32_t length = rr_error_text(text, sizeof text);
    printf("%s %d %d %s\n", name, (int)status, (int)length, text);
}

static void fluid(const char *designation)
{
    rr_fluid handle, again;
    require(rr_fluid_get(designation, &handle));
    require(rr_fluid_get(designation, &again));
    printf("fluid %s %d\n", designation, handle == again);

    rr_fluid_facts f;
    require(rr_fluid_facts_of(handle, &f));
    line("facts", 8, (double[]){ f.molar_mass, f.critical_temperature, f.critical_pressure, f.critical_density, f.minimum_temperature,
                                 f.maximum_temperature, f.maximum_pressure, f.maximum_saturation_temperature });
    for (double t = 250; t < 330; t += 20) {
        rr_saturation s;
        require(rr_saturation_at_temperature(handle, t, &s));
        state("bubble", &s.bubble);
        state("dew", &s.dew);
        require(rr_saturation_at_pressure(handle, s.dew.pressure, &s));
        state("bubble", &s.bubble);
        state("dew", &s.dew);

        rr_state point;
        require(rr_state_at(handle, t + 5, s.dew.pressure, &point));
        state("state", &point);

        rr_vessel v;
        for (double density = 5; density < 1000; density *= 7) {
            require(rr_vessel_at_temperature(handle, t, density, &v));
            state("bulk", &v.bulk);
            state("liquid", &v.liquid);
            state("vapor", &v.vapor);
            line("fraction", 1, &v.liquid_volume_fraction);
            require(rr_vessel_at_energy(handle, density, v.bulk.enthalpy - v.bulk.pressure / v.bulk.density, &v));
            state("bulk", &v.bulk);
            line("fraction", 1, &v.liquid_volume_fraction);
        }
    }

    rr_cylinder cylinders[] = {
        { .mark = "4BA400", .water_capacity = 21.6, .tare_weight = 12.5, .content = 4.0, .refrigerant = "R-134a" },
        { .test_pressure = 4.8e6, .water_capacity = 61.0, .tare_weight = 26.0 },
    };
    for (int i = 0; i < 2; i++) {
        rr_fill_limit limit;
        char text[4096];
        require(rr_fill_limit_of(handle, &cylinders[i], &limit, text, sizeof text));
        line("limit", 4, (double[]){ limit.maximum_fill, limit.maximum_gross_weight, limit.room, limit.cautions });
        lines(text);
    }

    rr_level level;
    char text[4096];
    require(rr_required_level(handle, 120.0, 1600.0, &level, text, sizeof text));
    line("level", 3, (double[]){ level.required_pressure, level.required_gauge_reading, level.cautions });
    lines(text);
}

/* The text of a file; the program ends where there is none. */
static const char *text_of(const char *path)
{
    static char text[1 << 16];
    FILE *file = fopen(path, "r");
    if (file == NULL || fread(text, 1, sizeof text - 1, file) == 0) {
        printf("%s cannot be read\n", path);
        exit(EXIT_FAILURE);
    }
    fclose(file);
    return text;
}

static void range(const char *name, rr_range r) { line(name, 3, (double[]){ r.low, r.best, r.high }); }

/* Ten minutes of readings, a second apart: the pressure falls, the weight rises. */
static void estimator(const char *job)
{
    rr_estimator estimator;
    require(rr_estimator_start(job, 0, &estimator));
    for (int i = 0; i < 600; i++) {
        rr_reading reading = {
            .time = i, .suction_gauge_pressure = 4e5 - 500.0 * i, .gross_weight = 40 + 0.01 * i,
            .air_temperature = 0.0 / 0.0, .pipe_temperature = 0.0 / 0.0, .discharge_gauge_pressure = 0.0 / 0.0, .machine_stopped = i > 590
        };
        require(rr_estimator_add(estimator, &reading));
        int32_t more = 1;
        while (more) {
            require(rr_estimator_work(estimator, &more));
        }
    }

    rr_estimate e;
    require(rr_estimator_read(estimator, &e));
    range("remaining", e.remaining);
    range("charge", e.total_charge);
    range("to-level", e.time_to_level);
    range("final", e.final_gross_weight);
    line("estimate", 7, (double[]){ e.time, e.level_reached_probability, e.cylinder_limit_first, e.vapor_only, e.has_time_to_level, e.conditions, e.not_used });
    require(rr_estimator_free(estimator));
    failure("freed", rr_estimator_read(estimator, &e));
}

/* Five minutes of a simulated pull, half a second a step, throttled after a while, stopped at the end. */
static void simulation(const char *job)
{
    rr_simulation simulation;
    require(rr_simulation_start(job, &simulation));
    rr_inputs inputs = RR_INPUTS_RUNNING;
    rr_simulated s = { 0 };
    for (int i = 0; i < 600; i++) {
        inputs.inlet_opening = i < 300 ? 1.0 : 0.5;
        inputs.machine_stopped = i >= 580;
        require(rr_simulation_step(simulation, 0.5, &inputs, &s));
    }
    line("simulated", 13, (double[]){ s.time, s.appliance_pressure, s.appliance_temperature, s.appliance_mass, s.liquid_mass, s.coldest_surface, s.suction_pressure,
                                      s.cylinder_pressure, s.cylinder_temperature, s.cylinder_mass, s.discharge_temperature, s.flow, s.outcome });
    require(rr_simulation_free(simulation));
}

int main(int count, char **arguments)
{
    printf("version %d %s\n", rr_interface_version() == RR_INTERFACE_VERSION, rr_version());
    double air;
    require(rr_air_pressure(1600.0, &air));
    line("air", 1, &air);
    fluid("R-134a");
    fluid("R-407C");

    if (count > 1) {
        const char *job = text_of(arguments[1]);
        simulation(job);
        estimator(job);
    }

    rr_fluid handle;
    rr_saturation s;
    require(rr_fluid_get("R-134a", &handle));
    failure("null", rr_fluid_get("R-134a", NULL));
    failure("nothing", rr_fluid_get(NULL, &handle));
    failure("unknown", rr_fluid_get("R-134q", &handle));
    failure("handle", rr_saturation_at_temperature(12345, 300.0, &s));
    failure("zero", rr_saturation_at_temperature(0, 300.0, &s));
    failure("range", rr_saturation_at_temperature(handle, 900.0, &s));
    failure("nan", rr_saturation_at_temperature(handle, 0.0 / 0.0, &s));
    failure("negative", rr_required_level(handle, -1.0, 0.0, (rr_level[1]){ { 0 } }, NULL, 0));

    char small[9];
    int32_t all = rr_error_text(small, sizeof small);
    printf("cut %s %d %d\n", small, all == rr_error_text(NULL, 0), all > (int32_t)sizeof small);
    return EXIT_SUCCESS;
}
