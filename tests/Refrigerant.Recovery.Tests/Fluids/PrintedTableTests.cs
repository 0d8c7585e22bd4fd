using Refrigerant.Recovery.Fluids;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids;

/// <summary>Printed tables that no equation-of-state code of this project or of CoolProp made.</summary>
public class PrintedTableTests
{
    /// <summary>
    /// Moran and Shapiro, Fundamentals of Engineering Thermodynamics, Table A-7 (older formulation than Kamei et al. 1995). Pressure within
    /// 0.05 %, liquid volume within 0.02 %, vapor volume within 0.15 % and half a unit of its last digit, latent heat within 0.15 %.
    /// </summary>
    [Theory]
    [InlineData(-60, 0.3749, 0.6833, 0.5370, 245.35)]
    [InlineData(-50, 0.6451, 0.6966, 0.3239, 239.44)]
    [InlineData(-45, 0.8290, 0.7037, 0.2564, 236.39)]
    [InlineData(-40, 1.0522, 0.7109, 0.2052, 233.27)]
    [InlineData(-30, 1.6389, 0.7262, 0.1355, 226.77)]
    [InlineData(-20, 2.4534, 0.7427, 0.0926, 219.91)]
    [InlineData(-10, 3.5485, 0.7606, 0.0652, 212.62)]
    [InlineData(-4, 4.3638, 0.7722, 0.0535, 208.00)]
    [InlineData(0, 4.9811, 0.7803, 0.0470, 204.81)]
    public void R22(double celsius, double bar, double liquidVolume, double vaporVolume, double latentHeat)
    {
        SaturationState s = Fluid.Get("R-22").SaturationAt(Temperature.FromDegreesCelsius(celsius));
        Close(bar, s.Bubble.Pressure.Bars, 5e-4, 0);
        Close(liquidVolume, 1000 / s.Bubble.Density.KilogramsPerCubicMeter, 2e-4, 0);
        Close(vaporVolume, 1 / s.Dew.Density.KilogramsPerCubicMeter, 1.5e-3, 5e-5);
        Close(latentHeat, s.LatentHeat.KilojoulesPerKilogram, 1.5e-3, 0);
    }

    /// <summary>
    /// R-134a at low temperature, from a printed saturation table without stated formulation: to the printed digits (liquid density has one decimal),
    /// latent heat to 0.005 kJ/kg.
    /// </summary>
    [Theory]
    [InlineData(-100, 0.5594, 1582.40, 0.039694, 261.488)]
    [InlineData(-95, 0.9390, 1569.10, 0.06479, 258.492)]
    [InlineData(-90, 1.5241, 1555.80, 0.10236, 255.534)]
    [InlineData(-85, 2.3990, 1542.50, 0.15697, 252.588)]
    [InlineData(-80, 3.6719, 1529.00, 0.23429, 249.669)]
    public void R134aCold(double celsius, double kilopascals, double liquidDensity, double vaporDensity, double latentHeat)
    {
        SaturationState s = Fluid.Get("R-134a").SaturationAt(Temperature.FromDegreesCelsius(celsius));
        Close(kilopascals, s.Bubble.Pressure.Kilopascals, 0, 5e-5);
        Close(liquidDensity, s.Bubble.Density.KilogramsPerCubicMeter, 0, 0.05);
        Close(vaporDensity, s.Dew.Density.KilogramsPerCubicMeter, 0, 5e-6);
        Close(latentHeat, s.LatentHeat.KilojoulesPerKilogram, 0, 5e-3);
    }

    /// <summary>
    /// R-134a by pressure: Mechanical Engineers' Handbook, vol. 4, Table 14. Its formulation is older than Tillner-Roth and Baehr 1994 and differs
    /// by up to 0.5 % in volume and 0.2 K.
    /// </summary>
    [Theory]
    [InlineData(1, -26.52, 0.1926)]
    [InlineData(2, -10.18, 0.1001)]
    [InlineData(3, 0.59, 0.0679)]
    [InlineData(4, 8.86, 0.0514)]
    [InlineData(5, 15.68, 0.0413)]
    [InlineData(6, 21.54, 0.0342)]
    [InlineData(8, 31.35, 0.0257)]
    [InlineData(10, 39.41, 0.0204)]
    [InlineData(12, 46.36, 0.01672)]
    public void R134aByPressure(double bar, double celsius, double vaporVolume)
    {
        SaturationState s = Fluid.Get("R-134a").SaturationAt(new Pressure(bar, PressureUnit.Bar));
        Assert.InRange(s.Dew.Temperature.DegreesCelsius - celsius, -0.2, 0.2);
        Close(vaporVolume, 1 / s.Dew.Density.KilogramsPerCubicMeter, 5e-3, 5e-5);
    }

    /// <summary>R-134a: registration dossier 15155 of the European Chemicals Agency: 1.207 g/cm³ at 25 °C, 570.0 kPa at 20 °C (measured).</summary>
    [Fact]
    public void R134aMeasured()
    {
        Fluid fluid = Fluid.Get("R-134a");
        Assert.Equal(1.207, fluid.SaturationAt(Temperature.FromDegreesCelsius(25)).Bubble.Density.GramsPerCubicCentimeter, 3);
        Close(570.0, fluid.SaturationAt(Temperature.FromDegreesCelsius(20)).Bubble.Pressure.Kilopascals, 4e-3, 0);
    }

    /// <summary>R-134a, a producer's constants (older formulation): normal boiling point −26.06 °C, and the IIR reference state.</summary>
    [Fact]
    public void R134aNormalBoilingPoint()
    {
        SaturationState s = Fluid.Get("R-134a").SaturationAt(Pressure.FromAtmospheres(1));
        Assert.InRange(s.Bubble.Temperature.DegreesCelsius, -26.08, -26.04);
    }

    private static void Close(double expected, double actual, double relative, double absolute) =>
        Assert.InRange(actual - expected, -(relative * expected) - absolute, (relative * expected) + absolute);
}
