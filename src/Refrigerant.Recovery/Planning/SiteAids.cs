using System;
using System.Linq;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Planning;

/// <summary>What is at hand to cool a cylinder and to warm an appliance; nothing by default. Immutable.</summary>
/// <remarks>Never a flame on either.</remarks>
public sealed record SiteAids
{
    /// <summary>For an initializer.</summary>
    public SiteAids()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="hasIce">See <see cref="HasIce"/>.</param>
    /// <param name="waterBath">See <see cref="WaterBath"/>.</param>
    /// <param name="hasCylinderFan">See <see cref="HasCylinderFan"/>.</param>
    /// <param name="heater">See <see cref="Heater"/>.</param>
    /// <param name="crankcaseHeater">See <see cref="CrankcaseHeater"/>.</param>
    /// <param name="applianceFans">See <see cref="ApplianceFans"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public SiteAids(
        bool? hasIce = null,
        Temperature? waterBath = null,
        bool? hasCylinderFan = null,
        Power? heater = null,
        Power? crankcaseHeater = null,
        double? applianceFans = null)
    {
        HasIce = hasIce ?? HasIce;
        WaterBath = waterBath ?? WaterBath;
        HasCylinderFan = hasCylinderFan ?? HasCylinderFan;
        Heater = heater ?? Heater;
        CrankcaseHeater = crankcaseHeater ?? CrankcaseHeater;
        ApplianceFans = applianceFans ?? ApplianceFans;
    }

    /// <summary>Nothing at hand.</summary>
    internal static SiteAids None { get; } = new();

    /// <summary>Whether there is ice enough for a bath around the cylinder.</summary>
    public bool HasIce { get; init; }

    /// <summary>Temperature of water for a bath around the cylinder, 0 °C to 60 °C; null for none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Temperature? WaterBath
    {
        get;
        init
        {
            if (value is Temperature given)
            {
                Require.InRange(given.Kelvins, 273.15, 333.15, "K", nameof(WaterBath));
            }

            field = Held.Celsius(value);
        }
    }

    /// <summary>Whether there is a fan to blow on the cylinder.</summary>
    public bool HasCylinderFan { get; init; }

    /// <summary>Electric heat for the appliance (blanket, warm box), 0 to 1 MW; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Power Heater
    {
        get;
        init
        {
            Require.InRange(Require.Watts(value, nameof(Heater)), 0, 1e6, "W", nameof(Heater));
            field = Held.Watts(value);
        }
    }

    /// <summary>Crankcase heater of the appliance's compressor, 0 to 100 kW; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Power CrankcaseHeater
    {
        get;
        init
        {
            Require.InRange(Require.Watts(value, nameof(CrankcaseHeater)), 0, 1e5, "W", nameof(CrankcaseHeater));
            field = Held.Watts(value);
        }
    }

    /// <summary>Heat exchange of the appliance with the air while its own fans run, as a multiple of that in still air, 1 to 100; 1, no fans, by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double ApplianceFans { get; init => field = Require.InRange(value, 1, 100, string.Empty, nameof(ApplianceFans)); } = 1;

    /// <summary>Whether anything can bring heat to the appliance.</summary>
    internal bool CanWarm => (double)Heater.Watts > 0 || (double)CrankcaseHeater.Watts > 0 || ApplianceFans > 1;

    /// <summary>What is at hand.</summary>
    public override string ToString()
    {
        string[] aids =
        [
            HasIce ? "ice" : string.Empty,
            WaterBath is Temperature bath ? $"water bath at {Require.Text(bath.Kelvins - 273.15)} °C" : string.Empty,
            HasCylinderFan ? "fan at the cylinder" : string.Empty,
            (double)Heater.Watts > 0 ? $"heater of {Require.Text((double)Heater.Watts)} W" : string.Empty,
            (double)CrankcaseHeater.Watts > 0 ? $"crankcase heater of {Require.Text((double)CrankcaseHeater.Watts)} W" : string.Empty,
            ApplianceFans > 1 ? $"fans of the appliance ×{Require.Text(ApplianceFans)}" : string.Empty,
        ];
        string text = string.Join(", ", aids.Where(aid => aid.Length > 0));
        return text.Length > 0 ? text : "nothing at hand";
    }
}
