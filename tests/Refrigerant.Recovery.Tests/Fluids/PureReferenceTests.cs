using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids;

/// <summary>All 53 fluids against an independent implementation of the same equations (source: first line of the data files).</summary>
public class PureReferenceTests
{
    /// <summary>Where the two phases of a reference row differ by more than this in g/RT, the row is no equilibrium of the equation.</summary>
    private const double EquilibriumTolerance = 1e-7;

    public static IEnumerable<object[]> PureFluids => ReferenceTable.PureFluids;

    [Fact]
    public void AllPureFluidsAreThere() => Assert.Equal(53, PureFluids.Count());

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void Saturation(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        IReadOnlyList<double[]> rows = ReferenceTable.Rows("saturation-pure.csv", fluid);
        Assert.Equal(25, rows.Count);
        foreach (double[] row in rows.Where(row => IsEquilibrium(model, row)))
        {
            SaturationPoint s = model.SaturationAtTemperature(row[0]);
            Close(row[1], s.Bubble.Pressure, 1e-7);
            Close(row[2], s.Bubble.Density, 1e-7);
            Close(row[3], s.Dew.Density, 1e-7);
            Close(row[5] - row[4], s.Dew.Enthalpy - s.Bubble.Enthalpy, 1e-6);
            Assert.InRange(s.Bubble.Enthalpy - row[4], -5, 5);
            Assert.InRange(s.Bubble.Entropy - row[6], -0.02, 0.02);
            Assert.InRange(s.Dew.Entropy - row[7], -0.02, 0.02);
            StateDerivatives liquid = model.DerivativesAt(row[0], s.Bubble.Density);
            StateDerivatives vapor = model.DerivativesAt(row[0], s.Dew.Density);
            Close(row[8], liquid.IsobaricHeatCapacity, 1e-4);
            Close(row[9], vapor.IsobaricHeatCapacity, 1e-4);
            Close(row[10], liquid.SpeedOfSound, 1e-4);
            Close(row[11], vapor.SpeedOfSound, 1e-4);
        }
    }

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void SinglePhase(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        IReadOnlyList<double[]> rows = ReferenceTable.Rows("single-phase-pure.csv", fluid);
        Assert.Equal(20, rows.Count);
        foreach (double[] row in rows)
        {
            StatePoint s = model.StateAt(row[0], row[1]);
            StateDerivatives d = model.DerivativesAt(row[0], s.Density);
            Close(row[2], s.Density, 1e-7);
            Assert.InRange(s.Enthalpy - row[3], -5, 5);
            Assert.InRange(s.Entropy - row[4], -0.02, 0.02);
            Assert.InRange(s.InternalEnergy - row[5], -5, 5);
            Close(row[6], d.IsochoricHeatCapacity, 1e-4);
            Close(row[7], d.IsobaricHeatCapacity, 1e-4);
            Close(row[8], d.SpeedOfSound, 1e-4);
        }
    }

    /// <summary>
    /// The reference's own saturation is not converged at its coldest rows of four fluids: the pressure of the equation at the reference's
    /// liquid density, or the Gibbs energies of its two phases, disagree (R-114 at 181.13 K: 3.36 MPa against 2.33 kPa). They are left out above,
    /// and here the library's states are shown to satisfy the two conditions there.
    /// </summary>
    [Fact]
    public void ReferenceRowsThatAreNoEquilibriumAreKnownAndSolved()
    {
        var left = new Dictionary<string, int>();
        foreach (string fluid in PureFluids.Select(f => (string)f[0]))
        {
            HelmholtzModel model = ReferenceTable.Model(fluid);
            foreach (double[] row in ReferenceTable.Rows("saturation-pure.csv", fluid).Where(row => !IsEquilibrium(model, row)))
            {
                left[fluid] = left.GetValueOrDefault(fluid) + 1;
                SaturationPoint s = model.SaturationAtTemperature(row[0]);
                (double vaporPressure, double vaporGibbs) = ReferenceTable.Equation(model, row[0], s.Dew.Density);
                (double liquidPressure, double liquidGibbs) = ReferenceTable.Equation(model, row[0], s.Bubble.Density);
                Close(s.Bubble.Pressure, vaporPressure, 1e-11);
                double compressibility = model.DerivativesAt(row[0], s.Bubble.Density).PressureByDensity * s.Bubble.Density;
                Assert.InRange((liquidPressure - vaporPressure) / compressibility, -1e-13, 1e-13);
                Assert.InRange(liquidGibbs - vaporGibbs, -1e-10, 1e-10);
            }
        }

        Assert.Equal(
            "R-114 8, R-21 1, R-236ea 5, R-40 3",
            string.Join(", ", left.OrderBy(e => e.Key, StringComparer.Ordinal).Select(e => $"{e.Key} {e.Value}")));
    }

    private static bool IsEquilibrium(HelmholtzModel model, double[] row)
    {
        (_, double liquid) = ReferenceTable.Equation(model, row[0], row[2]);
        (_, double vapor) = ReferenceTable.Equation(model, row[0], row[3]);
        return Math.Abs(liquid - vapor) < EquilibriumTolerance;
    }

    private static void Close(double expected, double actual, double relative) =>
        Assert.InRange((actual / expected) - 1, -relative, relative);
}
