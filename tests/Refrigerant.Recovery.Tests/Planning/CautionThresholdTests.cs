using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What a job calls for before anything is moved, a little to either side of where it begins.</summary>
public class CautionThresholdTests
{
    private const double Atmosphere = 101_325;

    /// <summary>A cubic metre of vapor at the air's pressure, by the ideal gas; R-717 is lighter than air (17 g/mol against 29), R-134a heavier (102 g/mol).</summary>
    [Theory]
    [InlineData("R-134a", 0.95, false, true)]
    [InlineData("R-134a", 1.05, true, true)]
    [InlineData("R-717", 0.95, false, false)]
    [InlineData("R-717", 1.05, true, false)]
    public void A_cubic_metre_of_vapor_takes_the_place_of_the_air(string fluid, double cubicMeters, bool said, bool heavy)
    {
        double kilograms = cubicMeters * Atmosphere * Fluid.Get(fluid).MolarMass.KilogramsPerMole / (8.314462618 * 293.15) * 1.01;
        Finding? caution = Caution(Job(fluid, kilograms, 20), "displaces-air");
        Assert.Equal(said, caution is not null);
        if (caution is not null)
        {
            Assert.Equal(heavy, caution.Message.Contains("heavier than air", System.StringComparison.Ordinal));
            Assert.Equal(cubicMeters, caution.Values.Single(value => value.Name == "vapor").InternationalValue!.Value, 0.03);
        }
    }

    /// <summary>What boils below 0 °C in the air of the place freezes skin. Normal boiling points: R-114 3.6 °C, R-124 −12 °C (ASHRAE 34); R-114 boils at 0 °C in 88 kPa, the air of some 1200 m.</summary>
    [Theory]
    [InlineData("R-114", 0, false)]
    [InlineData("R-114", 1000, false)]
    [InlineData("R-114", 1400, true)]
    [InlineData("R-124", 0, true)]
    [InlineData("R-123", 4000, false)]
    public void What_boils_below_freezing_in_the_air_here_freezes_skin(string fluid, double meters, bool said) => Assert.Equal(
        said, Caution(Job(fluid, 1, 20) with { Barometer = Barometer.AtElevation(Length.FromMeters(meters)) }, "freezes-skin") is not null);

    /// <summary>Near its critical point no liquid bounds the pressure: within 15 K of it (our choice), or where it lies below 104 °F. R-134a: 101.06 °C; R-744: 30.98 °C; R-1270: 91.1 °C.</summary>
    [Theory]
    [InlineData("R-134a", 85.5, false)]
    [InlineData("R-134a", 86.5, true)]
    [InlineData("R-1270", 75.5, false)]
    [InlineData("R-1270", 76.5, true)]
    [InlineData("R-744", -10, true)]
    public void Near_the_critical_point_pressure_has_no_bound(string fluid, double celsius, bool said) =>
        Assert.Equal(said, Caution(Job(fluid, 0.5, celsius), "high-pressure") is not null);

    /// <summary>A gauge that reads absolute pressures of sea level misleads where the air is a fiftieth thinner or thicker.</summary>
    [Theory]
    [InlineData(0.979, true)]
    [InlineData(0.981, false)]
    [InlineData(1.019, false)]
    [InlineData(1.021, true)]
    public void The_gauge_is_told_where_the_air_differs_by_a_fiftieth(double share, bool said) => Assert.Equal(
        said, Told(Job("R-134a", 1, 20) with { Barometer = Barometer.Reading(Pressure.FromPascals(share * Atmosphere)) }, "gauge-at-altitude") is not null);

    /// <summary>A charge of 0.5 kg in a cylinder of 23 kg: nothing is near a limit, nothing is moved.</summary>
    private static RecoveryJob Job(string fluid, double kilograms, double celsius) => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get(fluid),
            Charge = Mass.FromKilograms(kilograms),
            InternalVolume = Volume.FromLiters(20),
            Temperature = Temperature.FromDegreesCelsius(celsius),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)) with { ListedForFlammable = true, HighPressureCutout = Pressure.FromMegapascals(12) },
        Hoses = Jobs.Hoses(),
        Cylinders = [Jobs.Cylinder(50) with { ServicePressure = Pressure.FromMegapascals(12) }],
    };

    private static Finding? Caution(RecoveryJob job, string code) => RecoveryPlanner.Plan(job, new Nothing()).Cautions.SingleOrDefault(caution => caution.Code == code);

    private static Finding? Told(RecoveryJob job, string code) => RecoveryPlanner.Plan(job, new Nothing()).Findings.SingleOrDefault(finding => finding.Code == code);

    private sealed class Nothing : IRecoveryStrategy
    {
        public PlanStep? Next(PlanSituation now) => null;
    }
}
