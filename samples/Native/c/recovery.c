/* Before a recovery starts: what the refrigerant does, how much the cylinder takes, where the gauge must get to. The figures are invented. */
#include <stdio.h>
#include <stdlib.h>

#include "refrigerant_recovery.h"

static void check(rr_status status)
{
    if (status != RR_OK) {
        char text[512];
        rr_error_text(text, sizeof text);
        fprintf(stderr, "error %d: %s\n", (int)status, text);
        exit(EXIT_FAILURE);
    }
}

int main(void)
{
    if (rr_interface_version() != RR_INTERFACE_VERSION) {
        fprintf(stderr, "built for interface %d, found %d\n", RR_INTERFACE_VERSION, (int)rr_interface_version());
        return EXIT_FAILURE;
    }

    rr_fluid fluid;
    check(rr_fluid_get("R-410A", &fluid));

    rr_saturation saturation;
    check(rr_saturation_at_temperature(fluid, 298.15, &saturation));
    printf("R-410A at 25 C: %.1f kPa, liquid %.1f kg/m3\n", saturation.bubble.pressure / 1e3, saturation.bubble.density);

    rr_cylinder cylinder = {
        .mark = "4BA400", .water_capacity = 21.6, .tare_weight = 12.5, .content = 4.0, .refrigerant = "R-410A"
    };
    rr_fill_limit limit;
    char text[1024];
    check(rr_fill_limit_of(fluid, &cylinder, &limit, text, sizeof text));
    printf("cylinder: at most %.2f kg, %.2f kg on the scale, room for %.2f kg\n", limit.maximum_fill, limit.maximum_gross_weight, limit.room);
    printf("governed by: %s\n", text);

    rr_level level;
    check(rr_required_level(fluid, 10.0, 1600.0, &level, text, sizeof text));
    printf("pull down to %.2f kPa absolute, %.2f kPa on the gauge at 1600 m\n", level.required_pressure / 1e3, level.required_gauge_reading / 1e3);
    printf("%s\n", text);

    printf("Local codes and licensed practice govern.\n");
    return EXIT_SUCCESS;
}
