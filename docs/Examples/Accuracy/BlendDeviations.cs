using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Docs.Accuracy;

/// <summary>Deviations of every blend whose binary pairs are all published from the reference tables.</summary>
internal static class BlendDeviations
{
    private const string BubblePressure = "bubble pressure";
    private const string BubbleDensity = "bubble density";
    private const string DewPressure = "dew pressure";
    private const string DewDensity = "dew density";
    private const string Density = "density";
    private const string HeatCapacity = "heat capacity cp";
    private const string SoundSpeed = "speed of sound";

    private static readonly Lazy<IReadOnlyList<Deviation>> LazySaturation = new(ComputeSaturation);
    private static readonly Lazy<IReadOnlyList<Deviation>> LazySinglePhase = new(ComputeSinglePhase);

    public static string[] SaturationProperties => [BubblePressure, BubbleDensity, DewPressure, DewDensity];

    public static string[] SinglePhaseProperties => [Density, HeatCapacity, SoundSpeed];

    public static IReadOnlyList<Deviation> Saturation => LazySaturation.Value;

    public static IReadOnlyList<Deviation> SinglePhase => LazySinglePhase.Value;

    /// <summary>States left out since the density that the reference gives for the liquid is below the critical one: a root between the phases.</summary>
    public static string LeftOut => string.Join(
        ", ",
        Reference.Where(row => !HasLiquid(row)).Select(row => FormattableString.Invariant(
            $"{row.Fluid} at {row["T_K"]:F2} K ({row["rhoBubbleLiquid_kg_m3"]:F0} kg/m³)")));

    private static IReadOnlyList<ReferenceTable.Row> Reference => ReferenceTable.Read("bubble-dew-blends.csv").Rows;

    private static bool HasLiquid(ReferenceTable.Row row) => row["rhoBubbleLiquid_kg_m3"] > Fluid.Get(row.Fluid).Model.CriticalDensity;

    private static List<Deviation> ComputeSaturation()
    {
        List<Deviation> deviations = [];
        foreach (ReferenceTable.Row row in Reference.Where(HasLiquid))
        {
            PropertyModel model = Fluid.Get(row.Fluid).Model;
            double temperature = row["T_K"];
            double reduced = temperature / model.CriticalTemperature;
            SaturationPoint point = model.SaturationAtTemperature(temperature);
            deviations.Add(new(row.Fluid, reduced, BubblePressure, Deviation.Relative(point.Bubble.Pressure, row["pBubble_Pa"])));
            deviations.Add(new(row.Fluid, reduced, BubbleDensity, Deviation.Relative(point.Bubble.Density, row["rhoBubbleLiquid_kg_m3"])));
            deviations.Add(new(row.Fluid, reduced, DewPressure, Deviation.Relative(point.Dew.Pressure, row["pDew_Pa"])));
            deviations.Add(new(row.Fluid, reduced, DewDensity, Deviation.Relative(point.Dew.Density, row["rhoDewVapor_kg_m3"])));
        }

        return deviations;
    }

    private static List<Deviation> ComputeSinglePhase()
    {
        List<Deviation> deviations = [];
        foreach (ReferenceTable.Row row in ReferenceTable.Read("single-phase-blends.csv").Rows)
        {
            PropertyModel model = Fluid.Get(row.Fluid).Model;
            double temperature = row["T_K"];
            double reduced = temperature / model.CriticalTemperature;
            StatePoint state = model.StateAt(temperature, row["p_Pa"]);
            StateDerivatives derivatives = model.DerivativesAt(temperature, state.Density);
            deviations.Add(new(row.Fluid, reduced, Density, Deviation.Relative(state.Density, row["rho_kg_m3"])));
            deviations.Add(new(row.Fluid, reduced, HeatCapacity, Deviation.Relative(derivatives.IsobaricHeatCapacity, row["cp_J_kgK"])));
            deviations.Add(new(row.Fluid, reduced, SoundSpeed, Deviation.Relative(derivatives.SpeedOfSound, row["w_m_s"])));
        }

        return deviations;
    }
}
