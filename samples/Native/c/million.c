/* Time of each call, and memory over a million of them. Fails where memory grows by more than 2 bytes a call: the smallest object takes 24. */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>
#include <unistd.h>

#include "refrigerant_recovery.h"

enum { ROUNDS = 125000, CALLS_PER_ROUND = 8, LARGEST_GROWTH = 2 * ROUNDS * CALLS_PER_ROUND };

static rr_fluid fluid;
static long failures;

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

/* Resident memory in bytes; 0 where the system does not say. */
static long resident(void)
{
    long total = 0, pages = 0;
    FILE *file = fopen("/proc/self/statm", "r");
    if (file != NULL) {
        if (fscanf(file, "%ld %ld", &total, &pages) != 2) {
            pages = 0;
        }
        fclose(file);
    }
    return pages * sysconf(_SC_PAGESIZE);
}

static double vary(int i) { return 0.5 + (i * 7919 % 1000) / 2000.0; }

static void by_temperature(int i) { rr_saturation s; failures += rr_saturation_at_temperature(fluid, 240 + 80 * vary(i), &s) != RR_OK; }
static void by_pressure(int i) { rr_saturation s; failures += rr_saturation_at_pressure(fluid, 1e6 * vary(i), &s) != RR_OK; }
static void state(int i) { rr_state s; failures += rr_state_at(fluid, 320 + 50 * vary(i), 5e5, &s) != RR_OK; }
static void vessel(int i) { rr_vessel v; failures += rr_vessel_at_temperature(fluid, 300, 500 * vary(i), &v) != RR_OK; }
static void energy(int i) { rr_vessel v; failures += rr_vessel_at_energy(fluid, 300, 2.3e5 + 1e4 * vary(i), &v) != RR_OK; }
static void level(int i) { rr_level l; failures += rr_required_level(fluid, 100 * vary(i), 500, &l, NULL, 0) != RR_OK; }
static void limit(int i)
{
    char text[512];
    rr_cylinder cylinder = { .mark = "4BA400", .water_capacity = 21.6, .tare_weight = 12.5, .content = vary(i), .refrigerant = "R-134a" };
    rr_fill_limit l;
    failures += rr_fill_limit_of(fluid, &cylinder, &l, text, sizeof text) != RR_OK;
}
static void error(int i)
{
    char text[256];
    rr_saturation s;
    failures += rr_saturation_at_temperature(fluid, 900 + vary(i), &s) != RR_OUT_OF_RANGE || rr_error_text(text, sizeof text) < 2;
}

static const struct { const char *name; void (*call)(int); } calls[CALLS_PER_ROUND] = {
    { "saturation at a temperature", by_temperature }, { "saturation at a pressure", by_pressure },
    { "state", state }, { "vessel at a temperature", vessel }, { "vessel at an energy", energy },
    { "required level", level }, { "fill limit", limit }, { "an error and its text", error },
};

/* An estimator that is fed ten times a second, as a controller does: time and memory of an hour. */
static void an_hour(const char *path)
{
    static char job[1 << 16];
    rr_estimator estimator;
    FILE *file = fopen(path, "r");
    if (file == NULL || fread(job, 1, sizeof job - 1, file) == 0 || rr_estimator_start(job, 0, &estimator) != RR_OK) {
        failures++;
        return;
    }
    fclose(file);

    double longest = 0, all = 0;
    for (int i = 0; i < 36000; i++) {
        rr_reading reading = {
            .time = 0.1 * i, .suction_gauge_pressure = 4e5 - 13.0 * i, .gross_weight = 40 + 3e-4 * i,
            .air_temperature = 0.0 / 0.0, .pipe_temperature = 0.0 / 0.0, .discharge_gauge_pressure = 0.0 / 0.0
        };
        rr_estimate estimate;
        int32_t more;
        double start = seconds();
        failures += rr_estimator_add(estimator, &reading) != RR_OK || rr_estimator_work(estimator, &more) != RR_OK
            || rr_estimator_read(estimator, &estimate) != RR_OK;
        double took = seconds() - start;
        all += took;
        longest = took > longest ? took : longest;
    }
    printf("%-28s %8.3f us, the longest %.0f us\n", "estimator, a tick", all / 36000 * 1e6, longest * 1e6);
    failures += rr_estimator_free(estimator) != RR_OK;
}

int main(int count, char **arguments)
{
    if (rr_fluid_get("R-134a", &fluid) != RR_OK) {
        return EXIT_FAILURE;
    }
    for (int i = 0; i < ROUNDS / 10; i++) {
        for (int c = 0; c < CALLS_PER_ROUND; c++) {
            calls[c].call(i);
        }
    }

    if (count > 1) {
        an_hour(arguments[1]);
    }
    long before = resident();
    for (int c = 0; c < CALLS_PER_ROUND; c++) {
        double start = seconds();
        for (int i = 0; i < ROUNDS; i++) {
            calls[c].call(i);
        }
        printf("%-28s %8.3f us\n", calls[c].name, (seconds() - start) / ROUNDS * 1e6);
    }
    if (count > 1) {
        an_hour(arguments[1]);
    }
    long growth = resident() - before;
    printf("%d calls: memory grew by %ld bytes, %ld unexpected answers\n", ROUNDS * CALLS_PER_ROUND, growth, failures);
    return failures == 0 && growth <= LARGEST_GROWTH ? EXIT_SUCCESS : EXIT_FAILURE;
}
