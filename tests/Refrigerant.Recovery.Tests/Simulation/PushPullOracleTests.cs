using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>Push-pull against its equations with fixed steps (<see cref="PushPullOracle"/>) and against closed forms.</summary>
public class PushPullOracleTests
{
    // Charge kg, liters, start K, air K, bore of all hoses mm, displacement L/s, metal kg, film W/K, surface m². The liquid flashes in its hose in all, and chokes there with R-123.
    [Theory]
    [InlineData("R-134a", 20, 30, 293.15, 288.15, 10, 0.5, 40, 120, 0.08, 0.2)]
    [InlineData("R-22", 20, 30, 293.15, 288.15, 10, 0.5, 40, 200, 0.08, 0.2)]
    [InlineData("R-123", 60, 120, 297.15, 293.15, 25, 1.5, 300, 800, 0.25, 0.2)]
    [InlineData("R-410A", 18, 30, 293.15, 288.15, 10, 0.5, 40, 200, 0.08, 1)]
    [InlineData("R-134a", 20, 30, 293.15, 288.15, 10, 0.5, 0, 0, 0, 0.2)]
    public void Down_to_the_heel(
        string fluid, double charge, double liters, double start, double air, double bore, double displacement, double metalMass, double film, double surface, double step)
    {
        double heel = (fluid == "R-410A" ? 0.6 : 0.2) * charge;
        Appliance appliance = Setups.Appliance(fluid, charge, liters, start - 273.15, 50) with
        {
            Surroundings = Temperature.FromKelvins(air),
            MetalMass = Mass.FromKilograms(metalMass),
            MetalResistance = Setups.Conductance(400),
            LiquidReachable = true,
            LiquidHeel = Mass.FromKilograms(heel),
        };
        RecoveryCylinder cylinder = Setups.Cylinder(60, 6) with { ServicePressure = Pressure.FromMegapascals(6) };
        StageResult result = PushPull.Simulate(
            appliance,
            Setups.Machine(displacement),
            Setups.Hoses(3, bore),
            cylinder,
            new PushPullOptions { CondensingConductance = film, LiquidSurface = Area.FromSquareMeters(surface), RelativeTolerance = 1e-9, MaximumSteps = 100_000 });
        Assert.Equal(StageEnd.LiquidGone, result.End);

        PropertyModel model = appliance.Fluid.Model;
        double b = bore * 1e-3;
        var oracle = new PushPullOracle(model, start)
        {
            Volume = liters * 1e-3,
            Surface = surface,
            Air = air,
            Metal = new OracleMetal(metalMass * 480, 50, 400) { Film = film },
            Machine = new OracleMachine(model, new OracleGas(model, start), new OracleLine([], (3, b), (3, b)), displacement * 1e-3) { Condenses = false },
            LiquidHose = new OracleLine([], (3, b)),
            Cylinder = new OracleCylinder(model, cylinder.InternalVolume.CubicMeters, 36),
        };
        double[] y = oracle.Initial(charge, 0, start, 6, air);
        FixedStep.Integrate(y, 1, fluid == "R-410A" ? 25 : 100, oracle.Slope);
        double seconds = 1 + FixedStep.Until(y, step, 1e4, oracle.Slope, state => state[0] - heel);
        Compare(result, oracle, y, seconds, charge);
        Assert.True(oracle.Flashing > 0.1 && oracle.Choked == (fluid == "R-123"), $"{oracle.Flashing} {oracle.Choked}");
    }

    /// <summary>The example job of the documentation, a cold-storage rack with valve cores left in, from a cylinder with 2 kg in it, condensing as it does where nothing is told.</summary>
    [Theory]
    [InlineData(null)]
    [InlineData(560e3)] // a hand on the inlet valve keeps it below
    public void The_example_of_the_documentation(double? designGauge)
    {
        const double Start = 293.15;
        Fitting core = Fitting.CoreDepressor();
        Appliance appliance = Setups.Appliance("R-134a", 30, 75, 20, 200) with
        {
            MetalMass = Mass.FromKilograms(150),
            MetalResistance = Setups.Conductance(500),
            LiquidReachable = true,
            LiquidHeel = Mass.FromKilograms(2),
            DesignGaugePressure = designGauge is double given ? Pressure.FromPascals(given) : null,
            Oil = new ApplianceOil
            {
                Mass = Mass.FromKilograms(0.5),
                Kind = OilKind.PolyolEster,
                MolarMass = MolarMass.FromKilogramsPerMole(0.6),
                SolubilityFactor = 1.2,
                RefrigerantFraction = Ratio.FromDecimalFractions(0.2),
            },
        };
        Hose hose = Setups.Hose(1.524, 5, core);
        RecoveryCylinder cylinder = Setups.Cylinder(21.6, 2);
        StageResult result = PushPull.Simulate(
            appliance,
            Setups.Machine(0.5),
            new HoseSet { VaporSide = [hose], LiquidSide = [hose], Discharge = [hose] },
            cylinder,
            new PushPullOptions { CylinderLimit = Mass.FromKilograms(12), RelativeTolerance = 1e-9, MaximumSteps = 100_000 });
        Assert.Equal(StageEnd.CylinderFull, result.End);

        PropertyModel model = appliance.Fluid.Model;
        double face = Math.Pow(0.075, 2.0 / 3);
        double dissolved = 0.5 * 0.2 / 0.8;
        var oracle = new PushPullOracle(model, Start)
        {
            Volume = 0.075,
            Surface = face,
            Air = Start,
            Metal = new OracleMetal(150 * 480, 200, 500) { Film = 300 * 6 * face },
            Oil = new OracleOil(model, 0.5, 0.6, 1.2, Start),
            Machine = new OracleMachine(model, new OracleGas(model, Start), new OracleLine([0.1, 0.1], (1.524, 0.005), (1.524, 0.005)), 0.5e-3) { Condenses = false },
            LiquidHose = new OracleLine([0.1], (1.524, 0.005)),
            Cylinder = new OracleCylinder(model, cylinder.InternalVolume.CubicMeters, 0.6 * 21.6),
            Design = designGauge + 101_325 ?? double.PositiveInfinity,
        };
        double[] y = oracle.Initial(30 - dissolved, dissolved, Start, 2, Start);
        FixedStep.Integrate(y, 1, 200, oracle.Slope);
        double seconds = 1 + FixedStep.Until(y, 0.5, 1e4, oracle.Slope, state => 12 - state[9]);
        Compare(result, oracle, y, seconds, 30);
        Assert.Equal(y[12], result.Appliance.DissolvedMass.Kilograms, 2e-6 * 30);
        Assert.True(designGauge is null ? oracle.Pressure > 630e3 : oracle.Pressure < 620e3, $"{oracle.Pressure}");
    }

    /// <summary>
    /// Nothing condenses, wide hoses take next to no pressure and nothing is compressed: what the machine takes from the cylinder pushes as much liquid into it,
    /// t = m/(ρ′·S). Of a blend, which counts with its composition as charged, within 3 %.
    /// </summary>
    [Theory]
    [InlineData("R-134a", 1e-3)]
    [InlineData("R-22", 1e-3)]
    [InlineData("R-290", 1e-3)]
    [InlineData("R-123", 4e-3)]
    [InlineData("R-410A", 3e-2)]
    [InlineData("R-407C", 3e-2)]
    public void Without_condensation_liquid_moves_as_fast_as_the_machine_displaces(string fluid, double tolerance)
    {
        double charge = fluid == "R-290" ? 8 : 20;
        Appliance appliance = Setups.Appliance(fluid, charge, 30, 20, null) with
        {
            HeatResistance = Appliance.PerfectInsulation,
            MetalMass = Mass.Zero,
            LiquidReachable = true,
            LiquidHeel = Mass.FromKilograms(0.25 * charge),
        };
        StageResult result = PushPull.Simulate(
            appliance,
            Setups.Ideal(0.5),
            Setups.Hoses(0.2, tolerance > 1e-2 ? 25 : 45),
            Setups.Cylinder(60, 2 * charge) with { ServicePressure = Pressure.FromMegapascals(6) },
            new PushPullOptions { CondensingConductance = 0, LiquidSurface = Area.Zero, CylinderLimit = Mass.FromKilograms(2.9 * charge), MaximumSteps = 50_000 });
        Assert.Equal(StageEnd.LiquidGone, result.End);
        SaturationPoint start = appliance.Fluid.Model.SaturationAtTemperature(293.15);
        double before = (0.030 - (charge / start.Dew.Density)) / ((1 / start.Bubble.Density) - (1 / start.Dew.Density));
        double expected = (before - (0.25 * charge)) / (start.Bubble.Density * 0.5e-3);
        Assert.Equal(expected, result.Duration.Seconds, tolerance * expected);
    }

    private static void Compare(StageResult result, PushPullOracle oracle, double[] y, double seconds, double charge)
    {
        oracle.Slope(y, new double[y.Length]);
        TrajectoryPoint end = result.Trajectory[^1];
        double dissolved = y.Length > 12 ? y[12] : 0;
        Assert.Equal(seconds, result.Duration.Seconds, 2e-6 * seconds);
        Assert.Equal(y[0], end.LiquidMass.Kilograms, 2e-6 * charge);
        Assert.Equal(y[0] + y[2] + dissolved, result.RemainingMass.Kilograms, 2e-6 * charge);
        Assert.Equal(oracle.Pressure, end.AppliancePressure.Pascals, 2e-6 * oracle.Pressure);
        Assert.Equal(oracle.PoolTemperature, end.ApplianceTemperature.Kelvins, 1e-6 * oracle.PoolTemperature);
        Assert.Equal(y[9], result.Cylinder!.Mass.Kilograms, 2e-6 * charge);
        Assert.Equal(oracle.Cylinder.Vessel.Bulk.Pressure, result.Cylinder.Pressure.Pascals, 2e-6 * oracle.Pressure);
        Assert.Equal(y[5], result.After.MachineTemperature!.Value.Kelvins, 1e-6 * y[5]);
    }
}
