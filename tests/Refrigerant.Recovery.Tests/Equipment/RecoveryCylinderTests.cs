using System;
using Refrigerant.Recovery.Equipment;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Equipment;

public class RecoveryCylinderTests
{
    [Theory]
    [InlineData(1e300)]
    [InlineData(1.1e6)]
    [InlineData(0.9e-3)]
    [InlineData(0)]
    public void A_mass_that_no_cylinder_has_is_refused(double kilograms)
    {
        RecoveryCylinder cylinder = new()
        {
            WaterCapacity = Mass.FromKilograms(21.6),
            TareWeight = Mass.FromKilograms(13),
            ServicePressure = Pressure.FromPoundsForcePerSquareInch(400),
        };
        Mass mass = new(kilograms, UnitsNet.Units.MassUnit.Kilogram);
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => cylinder with { WaterCapacity = mass });
        Assert.Contains("it must be from 0.001 to 1000000 kg", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => cylinder with { TareWeight = mass });
    }
}
