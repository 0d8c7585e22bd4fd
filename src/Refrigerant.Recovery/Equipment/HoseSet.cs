using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Equipment;

/// <summary>The hoses of a job, each side as what the refrigerant passes one after the other. Immutable.</summary>
public sealed record HoseSet
{
    /// <summary>Wall of a refrigerant hose, m: common practice, no source.</summary>
    private const double WallThickness = 0.004;

    /// <summary>Still air and radiation around a hose, with the wall's own resistance, W/(m²·K): common practice, no source.</summary>
    private const double AirCoefficient = 8;

    /// <summary>For an initializer.</summary>
    public HoseSet()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="vaporSide">See <see cref="VaporSide"/>.</param>
    /// <param name="liquidSide">See <see cref="LiquidSide"/>.</param>
    /// <param name="discharge">See <see cref="Discharge"/>.</param>
    /// <param name="secondVaporSide">See <see cref="SecondVaporSide"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public HoseSet(
        IReadOnlyList<Hose> vaporSide,
        IReadOnlyList<Hose>? liquidSide = null,
        IReadOnlyList<Hose>? discharge = null,
        IReadOnlyList<Hose>? secondVaporSide = null)
    {
        VaporSide = vaporSide;
        LiquidSide = liquidSide ?? LiquidSide;
        Discharge = discharge ?? Discharge;
        SecondVaporSide = secondVaporSide ?? SecondVaporSide;
    }

    /// <summary>From the appliance's vapor port to the machine's inlet; at least one. In push-pull the machine blows through them.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    /// <exception cref="ArgumentException">The list is empty.</exception>
    public required IReadOnlyList<Hose> VaporSide
    {
        get;
        init
        {
            field = Require.Copy(value, nameof(VaporSide));
            if (field.Count == 0)
            {
                throw new ArgumentException("VaporSide has no hose; the machine needs at least one.", nameof(VaporSide));
            }
        }
    }

    /// <summary>
    /// A second run of hoses beside <see cref="VaporSide"/>, from another vapor port of the appliance to the machine's inlet: high and low side drawn at once. None by
    /// default. It counts in vapor recovery.
    /// </summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    public IReadOnlyList<Hose> SecondVaporSide
    {
        get;
        init => field = Require.Copy(value, nameof(SecondVaporSide));
    }

    = new ValueList<Hose>([]);

    /// <summary>From the appliance's liquid port to the cylinder, as push-pull uses it; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    public IReadOnlyList<Hose> LiquidSide
    {
        get;
        init => field = Require.Copy(value, nameof(LiquidSide));
    }

    = new ValueList<Hose>([]);

    /// <summary>From the machine's outlet to the cylinder; none by default. It counts for volume only.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    public IReadOnlyList<Hose> Discharge
    {
        get;
        init => field = Require.Copy(value, nameof(Discharge));
    }

    = new ValueList<Hose>([]);

    /// <summary>Internal volume of all hoses.</summary>
    public Volume InternalVolume => new(VolumeOf(VaporSide) + VolumeOf(SecondVaporSide) + VolumeOf(LiquidSide) + VolumeOf(Discharge), VolumeUnit.CubicMeter);

    /// <summary>Conductance between still air and the gas in a run of hoses, W/K.</summary>
    internal static double ConductanceOf(IReadOnlyList<Hose> hoses)
    {
        double sum = 0;
        foreach (Hose hose in hoses)
        {
            sum += AirCoefficient * Math.PI * (hose.InnerDiameter.Meters + (2 * WallThickness)) * hose.Length.Meters;
        }

        return sum;
    }

    /// <summary>Internal volume of a run of hoses, m³.</summary>
    internal static double VolumeOf(IReadOnlyList<Hose> hoses)
    {
        double volume = 0;
        foreach (Hose hose in hoses)
        {
            volume += hose.InternalVolume.CubicMeters;
        }

        return volume;
    }

    /// <summary>The hoses of each side.</summary>
    public override string ToString() => $"vapor side: {Text(VaporSide)}; second vapor side: {Text(SecondVaporSide)}; liquid side: {Text(LiquidSide)}; discharge: {Text(Discharge)}";

    private static string Text(IReadOnlyList<Hose> hoses) => hoses.Count == 0 ? "none" : string.Join(", ", hoses);
}
