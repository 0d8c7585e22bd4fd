using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>What the reduced model shows at an instant, by the property model and its equations for hose and machine.</summary>
public class ReducedModelStateTests
{
    private static readonly PropertyModel Engine = Fluid.Get("R-134a").Model;
    private static readonly SaturationTable Table = new(Engine);
    private static readonly ReducedModel Model = new(Table);

    [Theory]
    [InlineData(6, 0.5)]
    [InlineData(2, 0)]
    [InlineData(0.8, 0.1)]
    public void Liquid_and_vapor_are_those_of_the_property_model(double mass, double dissolved)
    {
        ReducedParameters parameters = Typical() with { Charge = mass + dissolved + 1 };
        var state = new ReducedState { Temperature = 290, Dissolved = dissolved, Delivered = 1 };
        Model.Evaluate(in state, in parameters, new ReducedInputs(290, false), out ReducedOutput output);
        VesselPoint vessel = Engine.VesselAtTemperature(290, mass / 0.018);
        Assert.False(output.IsDry);
        Assert.Equal(mass, output.Mass, 1e-12);
        Assert.Equal(mass * (1 - vessel.Bulk.VaporFraction), output.LiquidMass, 2e-3 * mass);
        Assert.Equal(vessel.Vapor.Pressure, output.Pressure, 1e-3 * vessel.Vapor.Pressure);
        Assert.Equal(output.Pressure, output.SuctionPressure);
        Assert.Equal(0, output.Flow);
    }

    /// <summary>Compressibility between thin and saturated vapor is taken as straight, which leaves half a percent.</summary>
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.5)]
    [InlineData(0.95)]
    public void Vapor_has_the_pressure_of_its_density(double share)
    {
        double mass = share * 0.018 * Engine.SaturationAtTemperature(290).Dew.Density;
        ReducedParameters parameters = Typical() with { Charge = mass };
        var state = new ReducedState { Temperature = 290 };
        double expected = Engine.VesselAtTemperature(290, mass / 0.018).Vapor.Pressure;
        foreach (AssumedPhase phase in new[] { AssumedPhase.FromDensity, AssumedPhase.VaporOnly })
        {
            Model.Evaluate(in state, in parameters, new ReducedInputs(290, false, phase), out ReducedOutput output);
            Assert.True(output.IsDry);
            Assert.Equal(0, output.LiquidMass);
            Assert.Equal(expected, output.Pressure, 6e-3 * expected);
        }
    }

    /// <summary>Where liquid is taken for granted there is saturated vapor at least; where vapor only is, more than saturated has up to a fifth more of the change of compressibility.</summary>
    [Fact]
    public void What_is_taken_for_granted_counts_over_the_density()
    {
        double saturated = 0.018 * Engine.SaturationAtTemperature(290).Dew.Density;
        var state = new ReducedState { Temperature = 290 };
        ReducedParameters little = Typical() with { Charge = 0.5 * saturated };
        Model.Evaluate(in state, in little, new ReducedInputs(290, false, AssumedPhase.LiquidPresent), out ReducedOutput output);
        Assert.False(output.IsDry);
        Assert.Equal(saturated, output.Mass, 2e-3 * saturated);
        Assert.Equal(0, output.LiquidMass);
        Assert.Equal(Engine.SaturationAtTemperature(290).Dew.Pressure, output.Pressure, 1e-3 * output.Pressure);
        double z = Engine.SaturationAtTemperature(290).Dew.Pressure / (Engine.SaturationAtTemperature(290).Dew.Density * Table.GasConstant * 290);
        foreach ((double share, double counted) in new[] { (1.1, 1.1), (1.5, 1.2) })
        {
            ReducedParameters much = Typical() with { Charge = share * saturated };
            Model.Evaluate(in state, in much, new ReducedInputs(290, false, AssumedPhase.VaporOnly), out output);
            Assert.True(output.IsDry);
            double expected = share * saturated / 0.018 * Table.GasConstant * 290 * (1 - (counted * (1 - z)));
            Assert.Equal(expected, output.Pressure, 3e-3 * expected);
        }
    }

    /// <summary>Where more has left than there was, a hundred-thousandth of the charge is still there.</summary>
    [Fact]
    public void The_mass_never_goes_below_a_hundred_thousandth()
    {
        ReducedParameters parameters = Typical() with { Charge = 5 };
        var state = new ReducedState { Temperature = 290, Delivered = 4, Dissolved = 3 };
        Model.Evaluate(in state, in parameters, new ReducedInputs(290, false), out ReducedOutput output);
        Assert.Equal(5e-5, output.Mass, 1e-12);
        Assert.True(output.Pressure > 0);
    }

    /// <summary>1 − y² = (ρ/p)·S²·η²·y²·(R + (1/y − y)/A²), R·(F + (1 − F)·(ṁ0/ṁ)^¼) of the hose at the flow that comes; ṁ = S·η·ρ·y.</summary>
    [Theory]
    [InlineData(295, 3e9, 0, 5e-4)]
    [InlineData(295, 3e10, 0, 5e-4)]
    [InlineData(270, 3e9, 2e9, 1e-3)]
    [InlineData(250, 1e9, 1e8, 5e-4)]
    public void Hose_and_machine_obey_their_equations(double kelvins, double resistance, double inverseArea, double displacement)
    {
        ReducedParameters p = Typical() with { HoseResistance = resistance, InverseArea = inverseArea, Displacement = displacement, FixedLoss = 0.4, HoseFlow = 0.004, Leakage = 0.01 };
        var state = new ReducedState { Temperature = kelvins };
        Model.Evaluate(in state, in p, new ReducedInputs(kelvins, true), out ReducedOutput output);
        SaturationPoint at = Engine.SaturationAtTemperature(kelvins);
        double y = output.SuctionPressure / output.Pressure;
        double ratio = p.DischargePressure / output.SuctionPressure;
        double efficiency = ratio > 1 ? 1 - (p.Clearance * (Math.Pow(ratio, p.InverseExponent) - 1)) - (p.Leakage * (ratio - 1)) : 1;
        double flow = displacement * efficiency * at.Dew.Density * y;
        Assert.Equal(flow, output.Flow, 5e-3 * flow);
        double friction = resistance * (0.4 + (0.6 * Math.Pow(0.004 / flow, 0.25)));
        double loss = flow * flow / (at.Dew.Density * output.Pressure) * (friction + (inverseArea * ((1 / y) - y)));
        Assert.InRange(y, 0.3, 0.999);
        Assert.Equal(1 - (y * y), loss, 0.03 * loss);

        // From the suction that was found before it is the same, to what the iteration leaves.
        ReducedState found = state;
        Model.Find(ref found, in p, new ReducedInputs(kelvins, true));
        Assert.Equal(y, found.Suction, 1e-12);
        Model.Evaluate(in found, in p, new ReducedInputs(kelvins, true), out ReducedOutput again);
        Assert.Equal(output.Flow, again.Flow, 0.02 * output.Flow);
    }

    /// <summary>Much clearance at a low exponent behind a hose that takes half of the pressure: η at the pressure ratio of the machine's own inlet.</summary>
    [Fact]
    public void The_machine_sees_the_pressure_at_its_inlet()
    {
        ReducedParameters p = Typical() with { HoseResistance = 3e11, InverseExponent = 0.6, Clearance = 0.25, DischargePressure = 1.2e6 };
        var state = new ReducedState { Temperature = 285 };
        Model.Evaluate(in state, in p, new ReducedInputs(285, true), out ReducedOutput output);
        SaturationPoint at = Engine.SaturationAtTemperature(285);
        double y = output.SuctionPressure / output.Pressure;
        Assert.InRange(y, 0.35, 0.75);
        double efficiency = 1 - (0.25 * (Math.Pow(1.2e6 / output.SuctionPressure, 0.6) - 1));
        Assert.InRange(efficiency, 0.45, 0.85);
        Assert.Equal(5e-4 * efficiency * at.Dew.Density * y, output.Flow, 5e-3 * output.Flow);
    }

    /// <summary>η = 1 − c·(r^(1/n) − 1) − l·(r − 1) down to 0.4, then with the same slope towards zero, 0.4·e^(−(z − 0.6)/0.4): never none.</summary>
    [Theory]
    [InlineData(1.2e6, 1)]
    [InlineData(8e5, 1)]
    [InlineData(3e5, 0)]
    [InlineData(8e4, 0)]
    [InlineData(2e4, 0)]
    public void Efficiency_falls_with_the_pressure_ratio(double suction, double whole)
    {
        ReducedParameters p = Typical() with { Clearance = 0.06, Leakage = 0.01, InverseExponent = 0.9 };
        double ratio = 8e5 / suction;
        double lost = ratio > 1 ? (0.06 * (Math.Pow(ratio, 0.9) - 1)) + (0.01 * (ratio - 1)) : 0;
        double expected = lost < 0.6 ? 1 - lost : 0.4 * Math.Exp((0.6 - lost) / 0.4);
        Assert.Equal(expected, ReducedModel.Efficiency(suction, in p), 1e-12);
        Assert.True(whole == 0 || expected == whole);

        // What is drawn goes with suction pressure times efficiency.
        var now = new ReducedOutput { SuctionPressure = 4e5 };
        double at = 1 - (0.06 * (Math.Pow(2, 0.9) - 1)) - 0.01;
        Assert.Equal(suction * expected / (4e5 * at), ReducedModel.Drawn(suction, in p, in now), 1e-9);
        Assert.Equal(0, ReducedModel.Drawn(suction, in p, default));
    }

    /// <summary>At the flow that it holds for, gas warms by the share told of the way to the air; at twice that by (1/w − 1) doubled; colder air does not cool it.</summary>
    [Fact]
    public void Suction_gas_warms_towards_the_air()
    {
        double density = Engine.SaturationAtTemperature(270).Dew.Density;
        ReducedParameters cold = Typical() with { HoseResistance = 0, Clearance = 0, WarmingFlow = 5e-4 * density };
        ReducedParameters warm = cold with { Warming = 0.4 };
        ReducedParameters half = warm with { WarmingFlow = 0.5 * cold.WarmingFlow };
        Assert.Equal(270 / (270 + (0.4 * 30)), Flow(warm, 300) / Flow(cold, 300), 2e-3);
        Assert.Equal(270 / (270 + (30 / (1 + (2 * 1.5)))), Flow(half, 300) / Flow(cold, 300), 2e-3);
        Assert.Equal(Flow(cold, 250), Flow(warm, 250));

        static double Flow(ReducedParameters p, double air)
        {
            var state = new ReducedState { Temperature = 270 };
            Model.Evaluate(in state, in p, new ReducedInputs(air, true), out ReducedOutput output);
            return output.Flow;
        }
    }

    [Fact]
    public void The_last_vapor_is_saturated()
    {
        double expected = 0.018 * Engine.SaturationAtTemperature(283).Dew.Density;
        Assert.Equal(expected, Model.LastVapor(283, 0.018, 6), 2e-3 * expected);
    }

    private static ReducedParameters Typical() => ReducedParts.Typical() with { FixedLoss = 1 };
}
