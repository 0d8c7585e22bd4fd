using Refrigerant.Recovery.Equipment;
using Xunit;
using Xunit.Abstractions;

namespace Refrigerant.Recovery.Tests.Equipment;

/// <summary>Heat from still air, and what an appliance has of it where nothing is known.</summary>
public class HeatTests(ITestOutputHelper output)
{
    // Chlorine trade rules for sustained vapor draw: 1.0 to 1.5 lb/(day·°F) from a 150 lb cylinder, 8 from a ton container; with 268 kJ/kg (from
    // memory) 2.5 to 4 W/K and some 20 W/K, over 1.13 and 5.8 m² 2 to 3.5 W/(m²·K). A cylinder of 1.2 m, a container of 0.76 m across,
    // 4 to 12 K below the air (the differences are not in the rules; at 14 K it is 3.6 W/(m²·K)).
    [Theory]
    [InlineData(4)]
    [InlineData(8)]
    [InlineData(12)]
    public void Still_air_gives_what_cylinders_take_up(double difference)
    {
        double upright = StillAir.Upright(1.2, 293.15 - difference, 293.15);
        double lying = StillAir.Lying(0.76, 293.15 - difference, 293.15);
        output.WriteLine($"{difference} K: cylinder {upright:F2} W/(m²·K), {1.13 * upright:F2} W/K; ton container {lying:F2} W/(m²·K), {5.8 * lying:F1} W/K");
        Assert.InRange(upright, 2, 3.5);
        Assert.InRange(1.13 * upright, 2.5, 4);
        Assert.InRange(lying, 2, 3.7);
        Assert.InRange(5.8 * lying, 12, 22);
    }

    // Incropera and DeWitt, example of free convection from a vertical panel (glass-door fire screen, from memory): 0.71 m high, 232 °C against 23 °C,
    // film at 400 K, Ra = 1.813e9, Nu = 147, h = 7.0 W/(m²·K).
    [Fact]
    public void The_textbooks_fire_screen() => Assert.Equal(7.0, StillAir.Upright(0.71, 505, 296), 0.2);

    [Fact]
    public void At_rest_heat_is_conducted() => Assert.Equal(0.825 * 0.825 * 0.0263 / 0.5, StillAir.Upright(0.5, 300, 300), 1e-12);

    [Fact]
    public void A_vehicle_and_a_chiller_have_what_is_plausible()
    {
        foreach (double liters in new[] { 3.0, 4, 5 })
        {
            Assert.InRange(TypicalHeat.ConductanceFor(liters / 1000), 0.5, 3);
        }

        Assert.InRange(TypicalHeat.MetalFor(4e-3, 1.2) * 480 / 1.2, 1500, 3000);
        Assert.InRange(TypicalHeat.ConductanceFor(2), 20, 500);

        // 250 g of R-134a at a difference of 40 K: some 200 kJ/kg to boil.
        double seconds = 0.25 * 200e3 / (40 * TypicalHeat.ConductanceFor(4e-3));
        output.WriteLine($"250 g boil off in {seconds / 60:F0} min at 40 K");
        Assert.True(seconds > 300);
    }
}
