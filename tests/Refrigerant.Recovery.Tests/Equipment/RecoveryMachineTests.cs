using System;
using Refrigerant.Recovery.Equipment;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Equipment;

public class RecoveryMachineTests
{
    // Computed by hand from η = 1 + c − c·r^(1/n), the clearance relation of any refrigeration text.
    [Theory]
    [InlineData(0.05, 7, 1.3, 0.8266)]
    [InlineData(0.04, 8, 1.13, 0.7881)]
    [InlineData(0.04, 4, 1.15, 0.9065)]
    [InlineData(0.05, 4.38, 1.15, 0.8694)]
    [InlineData(0.045, 10, 1.1, 0.6800)]
    public void Volumetric_efficiency(double clearance, double ratio, double exponent, double expected) =>
        Assert.Equal(expected, Machine(clearance, exponent).EfficiencyAt(ratio), 5e-5);

    [Theory]
    [InlineData(0.05, 1.15, 33.2)]
    [InlineData(0.04, 1.13, 39.7)]
    public void Deepest_vacuum_is_where_re_expansion_fills_the_cylinder(double clearance, double exponent, double ratio)
    {
        RecoveryMachine machine = Machine(clearance, exponent);
        Pressure deepest = machine.DeepestVacuum(Pressure.FromKilopascals(1000));
        Assert.Equal(1000 / ratio, deepest.Kilopascals, 0.002 * 1000 / ratio);
        Assert.Equal(0, machine.EfficiencyAt(1000 / deepest.Kilopascals), 1e-12);
        Assert.Equal(0, machine.EfficiencyAt(10 * ratio));
    }

    // GPSA Engineering Data Book (from memory), in per cent: 96 − r − C·(r^(1/k) − 1), by hand.
    [Theory]
    [InlineData(4, 0.04, 1.15, 0.8265)]
    [InlineData(10, 0.05, 1.2, 0.5694)]
    public void Efficiency_with_leakage(double ratio, double clearance, double exponent, double expected)
    {
        RecoveryMachine machine = Machine(clearance, exponent) with { VolumetricEfficiency = 0.96, LeakageTerm = 0.01 };
        Assert.Equal(expected, machine.EfficiencyAt(ratio), 5e-5);
        double deepest = 1e6 / machine.DeepestVacuum(Pressure.FromPascals(1e6)).Pascals;
        Assert.Equal(0, machine.EfficiencyAt(deepest), 1e-10);
        Assert.True(machine.EfficiencyAt(0.999 * deepest) > 0);
        Assert.Equal(0.96 / 0.01, 1e6 / (machine with { ClearanceRatio = 0 }).DeepestVacuum(Pressure.FromPascals(1e6)).Pascals, 1e-6);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e9)]
    public void A_displacement_out_of_range_is_refused(double cubicMeters) =>
        Assert.ThrowsAny<ArgumentException>(() => RecoveryMachine.FromDisplacement(VolumeFlow.FromCubicMetersPerSecond(cubicMeters)));

    [Fact]
    public void Each_bad_property_has_its_own_error()
    {
        RecoveryMachine machine = Machine(0.04, 1.15);
        Assert.Equal("ClearanceRatio", Assert.Throws<ArgumentOutOfRangeException>(() => machine with { ClearanceRatio = -0.1 }).ParamName);
        Assert.Equal("PolytropicExponent", Assert.Throws<ArgumentOutOfRangeException>(() => machine with { PolytropicExponent = 0.9 }).ParamName);
        Assert.Equal("VolumetricEfficiency", Assert.Throws<ArgumentOutOfRangeException>(() => machine with { VolumetricEfficiency = 1.1 }).ParamName);
        Assert.Equal("IsentropicEfficiency", Assert.Throws<ArgumentOutOfRangeException>(() => machine with { IsentropicEfficiency = 0 }).ParamName);
        Assert.Equal("LowPressureSwitch", Assert.Throws<ArgumentOutOfRangeException>(() => machine with { LowPressureSwitch = Pressure.Zero }).ParamName);
        Assert.Equal("Condenser", Assert.Throws<ArgumentNullException>(() => machine with { Condenser = null! }).ParamName);
    }

    private static RecoveryMachine Machine(double clearance, double exponent) =>
        RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5), clearance, exponent);
}
