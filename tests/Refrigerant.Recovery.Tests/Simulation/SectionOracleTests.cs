using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>
/// An appliance of two sections, 12 L and 8 L, behind a restriction (IEC 60534-2-1, then a bore of 20 mm), drawn from the larger one: each has its mass, energy and metal, with fixed steps.
/// </summary>
public class SectionOracleTests
{
    private const double Start = 297.15;
    private const double Air = 303.15;
    private const double Displacement = 0.4e-3;
    private const double Outer = 40;
    private const double Inner = 300;
    private const double Metal = 10 * 480;
    private static readonly double[] Volumes = [0.012, 0.008];
    private static readonly double[] Charges = [2.5, 3.6];

    [Theory]
    [InlineData("R-134a", 0.05, 0.5)]
    [InlineData("R-134a", 0.02, 0.5)]
    [InlineData("R-22", 0.03, 1)]
    [InlineData("R-410A", 0.03, 1)]
    public void Drawn_through_a_restriction(string fluid, double flowCoefficient, double step)
    {
        const double Target = 100e3;
        Appliance appliance = Split(fluid, flowCoefficient);
        StageResult result = Pull(appliance, Target, 1e-9);
        Assert.Equal(StageEnd.TargetReached, result.End);

        PropertyModel model = appliance.Fluid.Model;
        var gas = new OracleGas(model, Start);
        OracleMetal[] metal = [.. Volumes.Select(volume => new OracleMetal(Metal * volume / 0.02, Outer * volume / 0.02, Inner * volume / 0.02))];
        var restriction = new OracleLine([flowCoefficient], (0.001, 0.02));
        var machine = new OracleMachine(model, gas, new OracleLine([], (3, 0.008)), Displacement);
        double volume = Setups.Cylinder(30, 4).InternalVolume.CubicMeters;
        var receiver = new OracleCylinder(model, volume, 18);
        double[] y = [.. Section(0), .. Section(1), .. receiver.Initial(4, Air), Air];
        double[] Section(int i)
        {
            VesselPoint vessel = model.VesselAtTemperature(Start, Charges[i] / Volumes[i]);
            return [Charges[i], Charges[i] * vessel.Bulk.InternalEnergy, .. metal[i].Initial(vessel.LiquidVolumeFraction, Start)];
        }

        VesselPoint At(double[] state, int i) => model.VesselAtEnergy(state[5 * i] / Volumes[i], state[(5 * i) + 1] / state[5 * i]);
        double seconds = FixedStep.Until(
            y,
            step,
            1e4,
            (state, d) =>
            {
                VesselPoint port = At(state, 0);
                VesselPoint far = At(state, 1);
                bool comes = far.Bulk.Pressure > port.Bulk.Pressure;
                VesselPoint source = comes ? far : port;
                double passing = restriction.Between(
                    source.Bulk.Pressure, source.Vapor.Density, gas.IdealExponent, gas.Viscosity, comes ? port.Bulk.Pressure : far.Bulk.Pressure);
                double across = port.Bulk.Pressure == far.Bulk.Pressure ? 0 : comes ? passing : -passing;
                machine.Solve(port.Vapor, port.Bulk.Pressure, receiver.At(state, 10).Bulk.Pressure, state[13], Air);
                for (int i = 0; i < 2; i++)
                {
                    VesselPoint vessel = i == 0 ? port : far;
                    metal[i].Slope(state, d, (5 * i) + 2, vessel.Bulk.Temperature, vessel.Bulk.Temperature, vessel.LiquidVolumeFraction, Air);
                    double flow = i == 0 ? across : -across;
                    d[5 * i] = flow;
                    d[(5 * i) + 1] = (flow * source.Vapor.Enthalpy) + metal[i].ToLiquid + metal[i].ToVapor;
                }

                d[0] -= machine.Flow;
                d[1] -= machine.Flow * port.Vapor.Enthalpy;
                receiver.Slope(state, d, 10, Air);
                d[10] += machine.Flow;
                d[11] += machine.Flow * machine.Outlet;
                d[13] = machine.BodySlope;
            },
            state => At(state, 0).Bulk.Pressure - Target);
        Assert.Equal(seconds, result.Duration.Seconds, 5e-6 * seconds);
        Assert.Equal(y[0], result.Appliance.Sections[0].Mass.Kilograms, 2e-6 * y[0]);
        Assert.Equal(y[5], result.Appliance.Sections[1].Mass.Kilograms, 2e-6 * Charges[1]);
        Assert.Equal(At(y, 1).Bulk.Temperature, result.Appliance.Sections[1].Temperature.Kelvins, 2e-6 * Start);
        Assert.Equal(y[10], result.Cylinder!.Mass.Kilograms, 2e-6 * 6);
    }

    /// <summary>
    /// The same charge, kept warm, takes longer through a restriction than as one vessel: at Cv 0.05 no less than the far section's charge over the choked flow,
    /// Av·(2/3)·√(X·p·ρ), of its saturated vapor.
    /// </summary>
    [Fact]
    public void Two_sections_take_longer_than_one_vessel()
    {
        Appliance Warm(double cv) => Split("R-134a", cv) with { HeatResistance = Setups.Conductance(1000), MetalResistance = Setups.Conductance(2000) };
        double Seconds(Appliance appliance) => Pull(appliance, 50e3, 1e-5).Duration.Seconds;
        double one = Seconds(Warm(1) with { Sections = [], Connections = [], VaporPort = null });
        double tenth = Seconds(Warm(0.1));
        double twentieth = Seconds(Warm(0.05));
        PropertyModel model = Fluid.Get("R-134a").Model;
        StatePoint dew = model.SaturationAtTemperature(Air).Dew;
        double choked = 0.05 * 2.4015e-5 * 2 / 3 * Math.Sqrt(new OracleGas(model, Start).IdealExponent / 1.4 * 0.72 * dew.Pressure * dew.Density);
        Assert.InRange(tenth / one, 1.3, 1.5);
        Assert.InRange(twentieth, 0.9 * Charges[1] / choked, 1.5 * Charges[1] / choked);
    }

    /// <summary>Almost shut: the gauge is at the target while most of the charge stands where it does not look, and that is said with its section, pressure and mass.</summary>
    [Fact]
    public void What_no_gauge_sees_is_a_finding()
    {
        StageResult result = Pull(Split("R-134a", 1e-3), 60e3, 1e-5);
        Assert.Equal(StageEnd.TargetReached, result.End);
        SectionContent far = result.Appliance.Sections[1];
        Assert.Equal(60, result.Appliance.Pressure.Kilopascals, 1e-3);
        Assert.InRange(far.Mass.Kilograms, 3.3, 3.6);
        Assert.True(far.Pressure.Kilopascals > 500);
        Finding finding = Assert.Single(result.Findings, f => f.Subject == FindingSubject.LiquidLeftBehind && f.Message.Contains("\"far\"", StringComparison.Ordinal));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Contains("no gauge", finding.Message, StringComparison.Ordinal);
    }

    private static Appliance Split(string fluid, double flowCoefficient) => Setups.Appliance(fluid, Charges.Sum(), 20, Start - 273.15, Outer) with
    {
        Surroundings = Temperature.FromKelvins(Air),
        MetalMass = Mass.FromKilograms(10),
        MetalResistance = Setups.Conductance(Inner),
        Sections =
        [
            new ApplianceSection { Name = "near", InternalVolume = Volume.FromCubicMeters(Volumes[0]), Charge = Mass.FromKilograms(Charges[0]) },
            new ApplianceSection { Name = "far", InternalVolume = Volume.FromCubicMeters(Volumes[1]), Charge = Mass.FromKilograms(Charges[1]) },
        ],
        Connections = [new SectionConnection { From = "near", To = "far", FlowCoefficient = flowCoefficient }],
        VaporPort = "near",
    };

    private static StageResult Pull(Appliance appliance, double target, double tolerance) => VaporRecovery.Simulate(
        appliance,
        Setups.Machine(1e3 * Displacement),
        Setups.Hoses(3, 8),
        Setups.Cylinder(30, 4) with { ServicePressure = Pressure.FromMegapascals(6) },
        new VaporRecoveryOptions { TargetPressure = Pressure.FromPascals(target), RelativeTolerance = tolerance, MaximumSteps = 100_000 });
}
