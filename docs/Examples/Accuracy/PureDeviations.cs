using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Docs.Accuracy;

/// <summary>Deviations of every pure fluid from the reference tables.</summary>
internal static class PureDeviations
{
    private const string SaturationPressure = "saturation pressure";
    private const string LiquidDensity = "liquid density";
    private const string VaporDensity = "vapor density";
    private const string LatentHeat = "latent heat";
    private const string Density = "density";
    private const string HeatCapacity = "heat capacity cp";
    private const string SoundSpeed = "speed of sound";

    /// <summary>Gibbs energies of the reference's two phases agree to 1e-5 J/kg, except where it did not converge: above this, J/kg.</summary>
    private const double GibbsTolerance = 1e-4;

    private static readonly Lazy<IReadOnlyList<Deviation>> LazySaturation = new(ComputeSaturation);
    private static readonly Lazy<IReadOnlyList<Deviation>> LazySinglePhase = new(ComputeSinglePhase);

    public static string[] SaturationProperties => [SaturationPressure, LiquidDensity, VaporDensity, LatentHeat];

    public static string[] SinglePhaseProperties => [Density, HeatCapacity, SoundSpeed];

    public static IReadOnlyList<Deviation> Saturation => LazySaturation.Value;

    /// <summary>How many states of each fluid are left out since the reference's own two phases are not in equilibrium there.</summary>
    public static string LeftOut => string.Join(
        ", ",
        Reference.Where(row => !IsEquilibrium(row)).GroupBy(row => row.Fluid).Select(group => $"{group.Key} {group.Count()}"));

    public static IReadOnlyList<Deviation> SinglePhase => LazySinglePhase.Value;

    private static IReadOnlyList<ReferenceTable.Row> Reference => ReferenceTable.Read("saturation-pure.csv").Rows;

    private static bool IsEquilibrium(ReferenceTable.Row row)
    {
        double liquid = row["hL_J_kg"] - (row["T_K"] * row["sL_J_kgK"]);
        double vapor = row["hV_J_kg"] - (row["T_K"] * row["sV_J_kgK"]);
        return Math.Abs(liquid - vapor) <= GibbsTolerance;
    }

    private static List<Deviation> ComputeSaturation()
    {
        List<Deviation> deviations = [];
        foreach (ReferenceTable.Row row in Reference.Where(IsEquilibrium))
        {
            PropertyModel model = Fluid.Get(row.Fluid).Model;
            double temperature = row["T_K"];
            double reduced = temperature / model.CriticalTemperature;
            SaturationPoint point = model.SaturationAtTemperature(temperature);
            deviations.Add(new(row.Fluid, reduced, SaturationPressure, Deviation.Relative(point.Bubble.Pressure, row["p_Pa"])));
            deviations.Add(new(row.Fluid, reduced, LiquidDensity, Deviation.Relative(point.Bubble.Density, row["rhoL_kg_m3"])));
            deviations.Add(new(row.Fluid, reduced, VaporDensity, Deviation.Relative(point.Dew.Density, row["rhoV_kg_m3"])));
            double latent = row["hV_J_kg"] - row["hL_J_kg"];
            deviations.Add(new(row.Fluid, reduced, LatentHeat, Deviation.Relative(point.Dew.Enthalpy - point.Bubble.Enthalpy, latent)));
        }

        return deviations;
    }

    private static List<Deviation> ComputeSinglePhase()
    {
        List<Deviation> deviations = [];
        foreach (ReferenceTable.Row row in ReferenceTable.Read("single-phase-pure.csv").Rows)
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
