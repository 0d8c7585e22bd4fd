using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>
/// Better equipment and more heat are never slower: the time until four fifths of the charge are in a large cylinder. (The time to a
/// target pressure is no such measure: without heat the gauge falls soonest, over a cold pool.)
/// </summary>
public class MonotonicityTests
{
    /// <summary>The error of the integration, relative to the time.</summary>
    private const double Slack = 2e-5;

    private static readonly string[] Designations = ["R-134a", "R-22", "R-32", "R-290"];

    private static readonly Gen<Setup> Settings =
        from fluid in Gen.Elements(Designations)
        from fill in Gen.Choose(3, 50)
        from conductance in Gen.Choose(5, 150)
        from metal in Gen.Choose(0, 60)
        from length in Gen.Choose(10, 150)
        from diameter in Gen.Choose(40, 140)
        from displacement in Gen.Choose(10, 100)
        select new Setup(fluid, fill / 100.0, conductance, metal, length / 10.0, diameter / 10.0, displacement / 100.0);

    [Property(MaxTest = 60)]
    public Property A_longer_hose_is_never_faster() => Prop.ForAll(
        Settings.ToArbitrary(), s => s.IsNoSlowerThan(s with { Length = 2 * s.Length }));

    [Property(MaxTest = 60)]
    public Property A_thinner_hose_is_never_faster() => Prop.ForAll(
        Settings.ToArbitrary(), s => s.IsNoSlowerThan(s with { Diameter = 0.8 * s.Diameter }));

    [Property(MaxTest = 60)]
    public Property More_heat_is_never_slower() => Prop.ForAll(
        Settings.ToArbitrary(), s => (s with { Conductance = 1.5 * s.Conductance }).IsNoSlowerThan(s));

    [Property(MaxTest = 40)]
    public Property A_longer_liquid_hose_is_never_faster_in_push_pull() => Prop.ForAll(
        Settings.ToArbitrary(),
        s => s.PushPullSeconds() <= (s with { Length = 1.5 * s.Length }).PushPullSeconds() * (1 + Slack)
            && s.PushPullSeconds() <= (s with { Diameter = 0.85 * s.Diameter }).PushPullSeconds() * (1 + Slack));

    /// <summary>Appliance and cylinder at one pressure: the temperature of the pool is found although it hardly changes.</summary>
    [Fact]
    public void Propane_is_pushed_over_from_equal_pressures()
    {
        Setup wide = new("R-290", 0.35, 51, 59, 1.8, 9.6, 0.12);
        double[] seconds = [wide.PushPullSeconds(), (wide with { Length = 2.7 }).PushPullSeconds(), (wide with { Diameter = 8.16 }).PushPullSeconds()];
        Assert.True(seconds[0] < seconds[1] && seconds[1] < seconds[2] && seconds[2] < 1000, string.Join(", ", seconds));
    }

    internal sealed record Setup(
        string Designation, double Fill, double Conductance, double Metal, double Length, double Diameter, double Displacement)
    {
        private double Charge => Fill * 0.05 * Fluid.Get(Designation).Model.SaturationAtTemperature(297.15).Bubble.Density;

        private Appliance Appliance => Setups.Appliance(Designation, Charge, 50, 24, Conductance) with
        {
            MetalMass = Mass.FromKilograms(Metal),
            LiquidReachable = true,
        };

        public bool IsNoSlowerThan(Setup other) => Seconds() <= other.Seconds() * (1 + Slack);

        /// <summary>
        /// Time to four fifths of the charge; infinite where it does not get there. Nothing warms the suction gas: a thinner hose has less of a surface, and where its drop does
        /// not matter that makes it the faster one.
        /// </summary>
        private double Seconds()
        {
            StageResult result = VaporRecovery.Simulate(
                Appliance,
                Setups.Machine(Displacement) with { Body = null },
                Setups.Hoses(Length, Diameter),
                Strong(2000, 50),
                new VaporRecoveryOptions { CylinderLimit = Mass.FromKilograms(50 + (0.8 * Charge)) });
            return result.End == StageEnd.CylinderFull ? result.Duration.Seconds : double.PositiveInfinity;
        }

        /// <summary>Time until the liquid is down to its heel; infinite where the machine cuts out on the pressure it builds.</summary>
        public double PushPullSeconds()
        {
            StageResult result = PushedOver();
            return result.End == StageEnd.LiquidGone ? result.Duration.Seconds : double.PositiveInfinity;
        }

        /// <summary>No pressure of its own ends the stage: a faster pull makes the cylinder warmer.</summary>
        private static RecoveryCylinder Strong(double water, double content) =>
            Setups.Cylinder(water, content) with { ServicePressure = Pressure.FromPoundsForcePerSquareInch(4000) };

        private StageResult PushedOver() => PushPull.Simulate(
            Appliance with { LiquidHeel = Mass.FromKilograms(0.3 * Charge) },
            Setups.Machine(Displacement),
            Setups.Hoses(3, 12) with { LiquidSide = [Setups.Hose(Length, Diameter)] },
            Strong(200, 10),
            new PushPullOptions());
    }
}
