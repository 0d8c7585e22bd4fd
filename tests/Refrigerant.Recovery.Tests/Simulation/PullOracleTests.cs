using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>
/// A pull with everything on — wetted and dry metal, oil, warm suction gas, the machine's body, condenser, cylinder and its wall — against the same balances written out
/// again from docs/models.md with fixed steps, bisection for the suction pressure and the property model's own energy solve.
/// </summary>
public class PullOracleTests
{
    private const double Tolerance = 2e-6;
    private const double Displacement = 0.4e-3;
    private const double Bore = 0.007;
    private const double HoseLength = 4;
    private const double Metal = 20 * 480;
    private const double Outer = 60;
    private const double Inner = 400;
    private const double OilMass = 1.5;
    private const double Factor = 1.4;

    [Theory]
    [InlineData("R-134a", 4, 40, 297.15, 303.15, 400, 2000)]
    [InlineData("R-22", 5, 40, 297.15, 303.15, 400, 2000)]
    [InlineData("R-290", 2, 40, 297.15, 303.15, 300, 2000)]
    [InlineData("R-123", 12, 60, 297.15, 303.15, 900, 2000)]
    [InlineData("R-744", 6, 30, 283.15, 293.15, 200, 2000)]
    [InlineData("R-410A", 4, 40, 297.15, 303.15, 300, 900)]
    [InlineData("R-407C", 4, 40, 297.15, 303.15, 300, 900)]
    public void A_pull_with_everything_on(string fluid, double charge, double liters, double start, double air, double seconds, int steps)
    {
        Appliance appliance = new()
        {
            Fluid = Fluid.Get(fluid),
            Charge = Mass.FromKilograms(charge),
            InternalVolume = Volume.FromLiters(liters),
            Temperature = Temperature.FromKelvins(start),
            Surroundings = Temperature.FromKelvins(air),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / Outer),
            MetalMass = Mass.FromKilograms(20),
            MetalResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / Inner),
            Oil = new ApplianceOil
            {
                Mass = Mass.FromKilograms(OilMass),
                Kind = OilKind.PolyolEster,
                MolarMass = MolarMass.FromKilogramsPerMole(0.6),
                SolubilityFactor = Factor,
                RefrigerantFraction = Ratio.FromDecimalFractions(0.15),
            },
        };
        RecoveryCylinder cylinder = new()
        {
            Label = "C",
            WaterCapacity = Mass.FromKilograms(30),
            TareWeight = Mass.FromKilograms(14),
            ServicePressure = Pressure.FromPoundsForcePerSquareInch(2400),
            Content = Mass.FromKilograms(4),
        };
        StageResult result = VaporRecovery.Simulate(
            appliance,
            RecoveryMachine.FromDisplacement(VolumeFlow.FromCubicMetersPerSecond(Displacement), highPressureCutout: Pressure.FromMegapascals(12)),
            new HoseSet { VaporSide = [new Hose { Length = Length.FromMeters(HoseLength), InnerDiameter = Length.FromMeters(Bore) }] },
            cylinder,
            new VaporRecoveryOptions { MaximumDuration = Duration.FromSeconds(seconds), RelativeTolerance = 1e-9, MaximumSteps = 100_000 });
        Assert.Equal(StageEnd.TimeLimit, result.End);

        // States: m, U, dissolved, E_oil, E_wet, E_dry, f, T_body, m_cylinder, U_cylinder, T_wall.
        PropertyModel model = appliance.Fluid.Model;
        double volume = liters * 1e-3;
        double dissolved = OilMass * 0.15 / 0.85;
        double mass = charge - dissolved;
        VesselPoint before = model.VesselAtTemperature(start, mass / volume);
        var metal = new OracleMetal(Metal, Outer, Inner);
        var oil = new OracleOil(model, OilMass, 0.6, Factor, start);
        var receiver = new OracleCylinder(model, cylinder.InternalVolume.CubicMeters, 14);
        var machine = new OracleMachine(model, new OracleGas(model, start), new OracleLine([], (HoseLength, Bore)), Displacement);
        double[] y =
        [
            mass, mass * before.Bulk.InternalEnergy, .. oil.Initial(dissolved), .. metal.Initial(before.LiquidVolumeFraction, start), air, .. receiver.Initial(4, air),
        ];
        FixedStep.Integrate(y, seconds, steps, (state, d) =>
        {
            VesselPoint vessel = model.VesselAtEnergy(state[0] / volume, state[1] / state[0]);
            double t = vessel.Bulk.Temperature;
            machine.Solve(vessel.Vapor, vessel.Bulk.Pressure, receiver.At(state, 8).Bulk.Pressure, state[7], air);
            metal.Slope(state, d, 4, t, t, vessel.LiquidVolumeFraction, air);
            oil.Slope(state, d, 2, vessel.Bulk.Pressure, metal.Dry(state, 4));
            d[0] = oil.Release - machine.Flow;
            d[1] = (oil.Release * oil.Enthalpy) - (machine.Flow * vessel.Vapor.Enthalpy) + metal.ToLiquid + metal.ToVapor;
            d[5] -= oil.Heat;
            d[7] = machine.BodySlope;
            receiver.Slope(state, d, 8, air);
            d[8] += machine.Flow;
            d[9] += machine.Flow * machine.Outlet;
        });

        Assert.Equal(y[0] + y[2], result.RemainingMass.Kilograms, Tolerance * charge);
        Assert.Equal(y[2], result.Appliance.DissolvedMass.Kilograms, Tolerance * charge);
        Assert.Equal(metal.Dry(y, 4), result.Appliance.DryMetalTemperature.Kelvins, Tolerance * start);
        Assert.Equal(oil.Temperature(y, 2), result.Appliance.OilTemperature.Kelvins, Tolerance * start);
        Assert.Equal(y[7], result.After.MachineTemperature!.Value.Kelvins, Tolerance * start);
        Assert.Equal(y[8], result.Cylinder!.Mass.Kilograms, Tolerance * charge);
        VesselPoint end = model.VesselAtEnergy(y[0] / volume, y[1] / y[0]);
        Assert.Equal(end.Bulk.Temperature, result.Appliance.Temperature.Kelvins, 5 * Tolerance * start);
        Assert.Equal(end.Bulk.Pressure, result.Appliance.Pressure.Pascals, 50 * Tolerance * end.Bulk.Pressure);
        Assert.Equal(receiver.At(y, 8).Bulk.Temperature, result.Cylinder.Temperature.Kelvins, Tolerance * start);
    }
}
