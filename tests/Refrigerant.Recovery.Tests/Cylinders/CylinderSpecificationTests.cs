using System;
using Refrigerant.Recovery.Equipment;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Cylinders;

public sealed class CylinderSpecificationTests
{
    // 49 CFR 173.115: the service pressure is the one marked; DOT 3A1800 means 1800 psig. Test pressures: 49 CFR 180.209, from memory.
    [Theory]
    [InlineData("DOT 3A1800", "3A", 1800, 3000)]
    [InlineData("DOT-4BA400", "4BA", 400, 800)]
    [InlineData("4bw 260", "4BW", 260, 520)]
    [InlineData("ICC-4B240", "4B", 240, 480)]
    [InlineData("4B240ET", "4B", 240, 480)]
    [InlineData("3AAX2400", "3AAX", 2400, 4000)]
    [InlineData("3AA2400", "3AA", 2400, 4000)]
    [InlineData("3E1800", "3E", 1800, 3000)]
    [InlineData("DOT-3AL2015", "3AL", 2015, 3358.333)]
    [InlineData("4AA480", "4AA", 480, 960)]
    [InlineData("4E240", "4E", 240, 480)]
    [InlineData("3B300", "3B", 300, 600)]
    [InlineData("3AX2400", "3AX", 2400, 4000)]
    [InlineData("3T2400", "3T", 2400, 4000)]
    [InlineData("4D500", "4D", 500, 1000)]
    [InlineData("4DA500", "4DA", 500, 1000)]
    [InlineData("4DS500", "4DS", 500, 1000)]
    public void Parse_ReadsTypeAndPressure(string mark, string type, int psi, double testPsi)
    {
        CylinderSpecification found = CylinderSpecification.FromMark(mark);
        Assert.Equal(type, found.Type);
        Assert.Equal(psi, found.ServicePressure!.Value.PoundsForcePerSquareInch, 1e-6);
        Assert.Equal(testPsi, found.TestPressure!.Value.PoundsForcePerSquareInch, 1e-3);
        Assert.False(found.IsUn);
        Assert.False(found.IsNonRefillable);
        Assert.StartsWith("DOT-" + type, found.ToString(), StringComparison.Ordinal);
    }

    /// <summary>A Canadian mark with an M after the specification has its pressure in bar (CSA B339, from memory), one without it in psi.</summary>
    [Theory]
    [InlineData("TC-4BAM28", "4BA", 28e5, 56e5, "TC-4BAM28")]
    [InlineData("tc 4bw m17", "4BW", 17e5, 34e5, "TC-4BWM17")]
    [InlineData("4BAM28", "4BA", 28e5, 56e5, "TC-4BAM28")]
    [InlineData("TC-3AAM156", "3AA", 156e5, 260e5, "TC-3AAM156")]
    [InlineData("CTC-4BA400", "4BA", 400 * 6894.757293, 800 * 6894.757293, "CTC-4BA400")]
    public void Parse_ReadsCanadianMarks(string mark, string type, double service, double test, string shown)
    {
        CylinderSpecification found = CylinderSpecification.FromMark(mark);
        Assert.Equal(type, found.Type);
        Assert.Equal(service, found.ServicePressure!.Value.Pascals, 1.0);
        Assert.Equal(test, found.TestPressure!.Value.Pascals, 1.0);
        Assert.Equal(shown, found.Mark);
        Assert.Equal(found, CylinderSpecification.FromMark(found.Mark));
    }

    /// <summary>What stands on a disposable cylinder is read as it stands there, so that it ends in "do not fill".</summary>
    [Theory]
    [InlineData("DOT-39 NRC 260/325", 260)]
    [InlineData("DOT 39 275/344", 275)]
    [InlineData("DOT-39260", 260)]
    public void Parse_ReadsDisposableOnes(string mark, int psi)
    {
        CylinderSpecification found = CylinderSpecification.FromMark(mark);
        Assert.True(found.IsNonRefillable);
        Assert.Equal(psi, found.ServicePressure!.Value.PoundsForcePerSquareInch, 1e-6);
        Assert.Equal(found, CylinderSpecification.FromMark(found.Mark));
    }

    [Theory]
    [InlineData("DOT 39 275", true)]
    [InlineData("4L200", false)]
    public void Parse_WhereNoTestPressureIsKnown_LeavesItOut(string mark, bool disposable)
    {
        CylinderSpecification found = CylinderSpecification.FromMark(mark);
        Assert.Null(found.TestPressure);
        Assert.Equal(disposable, found.IsNonRefillable);
    }

    [Theory]
    [InlineData("")]
    [InlineData("DOT")]
    [InlineData("5X400")]
    [InlineData("4BA")]
    [InlineData("4BA0")]
    [InlineData("4BA10001")]
    [InlineData("4BA99999999999999999999")]
    [InlineData("4BAabc")]
    [InlineData("DOT-4BAM28")]
    [InlineData("TC-4BAM701")]
    [InlineData("TC-4BAM")]
    [InlineData("bottle")]
    public void Parse_UnknownMarks_AreClearErrors(string mark)
    {
        ArgumentException e = Assert.Throws<ArgumentException>(() => CylinderSpecification.FromMark(mark));
        Assert.Equal("mark", e.ParamName);
        Assert.Contains("\"" + mark + "\" is no cylinder mark", e.Message, StringComparison.Ordinal);
        Assert.Contains("4BA", e.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("4BA1")]
    [InlineData("4BA10000")]
    public void Parse_AcceptsTheEndsOfItsRange(string mark) => Assert.NotNull(CylinderSpecification.FromMark(mark).ServicePressure);

    [Fact]
    public void Un_HasATestPressureOnly()
    {
        CylinderSpecification un = CylinderSpecification.FromTestPressure(new Pressure(42, PressureUnit.Bar));
        Assert.True(un.IsUn);
        Assert.Null(un.ServicePressure);
        Assert.Equal(42, un.TestPressure!.Value.Bars, 1e-9);
        Assert.Equal("UN 42 bar", un.Mark);
        Assert.Throws<ArgumentNullException>(() => CylinderSpecification.FromMark(null!));
    }

    [Fact]
    public void FromMark_TakesTheServicePressureFromTheMark()
    {
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark("DOT-4BA400", new Mass(47.6, MassUnit.Pound), new Mass(27.5, MassUnit.Pound));
        Assert.Equal(400, cylinder.ServicePressure.PoundsForcePerSquareInch, 1e-6);
        Assert.Equal("DOT-4BA400", cylinder.Specification!.Mark);

        // 47.6 lb of water at 27.737 in³ each.
        Assert.Equal(47.6 * 27.737, cylinder.InternalVolume.CubicInches, 1e-6);
        Assert.Equal(40.0, cylinder.WeighedAt(new Mass(40, MassUnit.Pound)).GrossWeight.Pounds, 1e-9);
        Assert.Equal(0, cylinder.WeighedAt(cylinder.TareWeight).Content.Kilograms);
        RecoveryCylinder un = RecoveryCylinder.FromTestPressure(new Pressure(48, PressureUnit.Bar), new Mass(10, MassUnit.Kilogram), new Mass(5, MassUnit.Kilogram));
        Assert.Equal(32, un.ServicePressure.Bars, 1e-9);
    }
}
