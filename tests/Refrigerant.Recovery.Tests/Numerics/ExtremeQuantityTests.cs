using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Numerics;

/// <summary>Quantities that no number holds are refused by name, value and range; nothing that was made throws when it is shown.</summary>
public class ExtremeQuantityTests
{
    private static readonly Power Huge = new(1e15m, PowerUnit.Petawatt);

    public static TheoryData<string, Action> Powers => new()
    {
        { "RatedDuty", () => _ = new Condenser { RatedDuty = Huge, Cooling = CondenserCooling.Air } },
        { "FrictionPower", () => _ = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)).Body! with { FrictionPower = Huge } },
        { "Heater", () => _ = new SiteAids { Heater = -Huge } },
        { "CrankcaseHeater", () => _ = new SiteAids { CrankcaseHeater = Huge } },
        { "power", () => QuantityText.Power(Huge) },
        { "heat", () => QuantityText.HeatFlow(Huge, DisplayUnits.UnitedStatesCustomary) },
        { "heat", () => QuantityText.HeatFlow(Huge, DisplayUnits.International) },
        { "power", () => FindingValue.Power("heater", Huge) },
        { "heat", () => FindingValue.HeatFlow("heat", -Huge) },
    };

    [Theory]
    [MemberData(nameof(Powers))]
    public void A_power_beyond_watts_is_refused_by_name(string parameter, Action make)
    {
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(make);
        Assert.Equal(parameter, error.ParamName);
        Assert.Contains("1E+15 Petawatts; it must be from -7.9E+28 to 7.9E+28 W", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_flow_too_slow_for_a_factor_is_refused()
    {
        Assert.Contains("from 1E-300", Assert.Throws<ArgumentOutOfRangeException>(() => Friction.Factor(5e-324, 1)).Message, StringComparison.Ordinal);
        Assert.Equal(64e300, Friction.Factor(1e-300, 1), 1e288);
        Assert.True(double.IsFinite(Friction.Factor(double.MaxValue, 0)));
    }

    [Fact]
    public void Gas_beyond_all_pressure_is_refused_and_the_most_can_be_shown()
    {
        var cylinder = new RecoveryCylinder { WaterCapacity = Mass.FromKilograms(1e-3), TareWeight = Mass.FromKilograms(1), ServicePressure = Pressure.FromBars(28) };
        Fluid fluid = Fluid.Get("R-134a");
        var at = Temperature.FromDegreesCelsius(20);
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => CylinderState.Initial(cylinder, fluid, at, new AmountOfSubstance(1e308, AmountOfSubstanceUnit.Millimole)));
        Assert.Equal("nonCondensables", error.ParamName);
        Assert.Contains("from 0 to 1000000000 mol", error.Message, StringComparison.Ordinal);
        CylinderState most = CylinderState.Initial(cylinder, fluid, at, AmountOfSubstance.FromMoles(1e9));
        Assert.True(double.IsFinite(most.Pressure.Pascals));
        Assert.NotEmpty(most.ToString());
    }

    [Fact]
    public void A_point_of_no_plan_can_be_shown() => Assert.NotEmpty(default(PlanPoint).ToString());
}
