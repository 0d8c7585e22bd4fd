using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids.Mixtures;

/// <summary>113 blends against an independent implementation of the same equations (source: first line of the data files).</summary>
public class BlendReferenceTests
{
    /// <summary>
    /// At these rows the reference took a root between the phases for the liquid: bubble liquids of 459 to 475 kg/m³, where 20 K below they
    /// have 892 to 935 (R-1234yf's equation has such a loop). <see cref="ReferenceRowsBetweenThePhases"/> shows it.
    /// </summary>
    private static readonly HashSet<(string, double)> BetweenThePhases = [("R-451A", 350.14), ("R-451B", 350.2), ("R-516A", 353.81)];

    /// <summary>The blends that the reference has rows of.</summary>
    public static IEnumerable<object[]> Blends => WithRows("bubble-dew-blends.csv");

    public static IEnumerable<object[]> BlendsWithStates => WithRows("single-phase-blends.csv");

    [Fact]
    public void AllBlendsAreThere() => Assert.Equal(144, BlendCases.Models.Count);

    [Fact]
    public void AllReferenceRowsAreThere()
    {
        Assert.Equal(1094, BlendCases.Models.Sum(m => ReferenceTable.Rows("bubble-dew-blends.csv", m.Designation).Count));
        Assert.Equal(678, BlendCases.Models.Sum(m => ReferenceTable.Rows("single-phase-blends.csv", m.Designation).Count));
    }

    [Theory]
    [MemberData(nameof(Blends))]
    public void BubbleAndDew(string blend)
    {
        MixtureModel model = BlendCases.Model(blend);
        IReadOnlyList<double[]> rows = ReferenceTable.Rows("bubble-dew-blends.csv", blend);
        Assert.NotEmpty(rows);
        foreach (double[] row in rows)
        {
            if (BetweenThePhases.Contains((blend, row[0])))
            {
                continue;
            }

            SaturationPoint s = model.SaturationAtTemperature(row[0]);
            Close(row[1], s.Bubble.Pressure, 1e-7);
            Close(row[2], s.Bubble.Density, 1e-7);
            Close(row[5], s.Dew.Pressure, 1e-7);
            Close(row[6], s.Dew.Density, 1e-7);
            Assert.InRange((s.Dew.Enthalpy - s.Bubble.Enthalpy) - (row[7] - row[3]), -1, 1);
            Assert.InRange((s.Dew.Entropy - s.Bubble.Entropy) - (row[8] - row[4]), -0.005, 0.005);
        }
    }

    [Theory]
    [MemberData(nameof(BlendsWithStates))]
    public void SinglePhase(string blend)
    {
        MixtureModel model = BlendCases.Model(blend);
        foreach (double[] row in ReferenceTable.Rows("single-phase-blends.csv", blend))
        {
            StatePoint s = model.StateAt(row[0], row[1]);
            StateDerivatives d = model.DerivativesAt(row[0], s.Density);
            Close(row[2], s.Density, 1e-9);

            // The reference takes ideal-gas parts with each component's own gas constant: 5 ppm.
            Close(row[6], d.IsochoricHeatCapacity, 1e-5);
            Close(row[7], d.IsobaricHeatCapacity, 1e-5);
            Close(row[8], d.SpeedOfSound, 1e-6);
        }
    }

    /// <summary>
    /// Enthalpies differ from the reference by a constant of each blend: it keeps a component's constant of integration, not its reference
    /// state, where the component's reducing temperature is not the critical one (R-134a).
    /// </summary>
    [Theory]
    [MemberData(nameof(Blends))]
    public void EnthalpyDifferences(string blend)
    {
        MixtureModel model = BlendCases.Model(blend);
        double[] differences =
        [
            .. ReferenceTable.Rows("single-phase-blends.csv", blend).Select(row => model.StateAt(row[0], row[1]).Enthalpy - row[3]),
            .. ReferenceTable.Rows("bubble-dew-blends.csv", blend).Where(row => !BetweenThePhases.Contains((blend, row[0])))
                .Select(row => model.SaturationAtTemperature(row[0]).Bubble.Enthalpy - row[3]),
        ];
        Assert.True(differences.Length > 1);
        Assert.InRange(differences.Max() - differences.Min(), 0, 1);
        Assert.InRange(differences.Max(d => Math.Abs(d)), 0, 17);
    }

    [Fact]
    public void ReferenceRowsBetweenThePhases()
    {
        foreach ((string blend, double temperature) in BetweenThePhases)
        {
            MixtureModel model = BlendCases.Model(blend);
            double[] row = ReferenceTable.Rows("bubble-dew-blends.csv", blend).Single(r => r[0] == temperature);
            var phase = new MixturePhase(model.Engine.Equation);
            phase.SetComposition(model.Engine.Composition);
            phase.SetTemperature(temperature);
            double found = model.SaturationAtTemperature(temperature).Bubble.Density;
            bool loop = false;
            for (double density = row[2]; density < found; density += 1)
            {
                _ = phase.PressureAt(density / model.MolarMass, out double slope);
                loop |= slope < 0;
            }

            Assert.True(loop, $"{blend}: no unstable stretch between the reference's liquid and the one found");
        }
    }

    private static IEnumerable<object[]> WithRows(string file) =>
        BlendCases.All.Where(blend => ReferenceTable.Rows(file, (string)blend[0]).Count > 0);

    private static void Close(double expected, double actual, double relative) =>
        Assert.InRange(actual / expected, 1 - relative, 1 + relative);
}
