using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Findings;

public static partial class QuantityText
{
    private const double PascalsPerPsi = 6894.757293168361;

    /// <summary>Conventional inch of mercury, Pa (NIST SP 811).</summary>
    private const double PascalsPerInchOfMercury = 3386.389;

    /// <summary>Conventional millimeter of mercury, Pa (NIST SP 811); a micron of mercury is a thousandth of it.</summary>
    private const double PascalsPerMillimeterOfMercury = 133.322387415;

    /// <summary>Below this absolute pressure, millimeters of mercury instead of psia: half a psi. Our choice.</summary>
    private const double LowAbsolute = 0.5 * PascalsPerPsi;

    /// <summary>Beyond 28 inHg a tenth of an inch is a tenth of what is left: two decimals. Our choice.</summary>
    private const double DeepVacuum = 28 * PascalsPerInchOfMercury;

    /// <summary>A gauge reading at the place: "46 psig", below zero "15 inHg of vacuum"; "317 kPa gauge", below zero "50.8 kPa of vacuum".</summary>
    /// <param name="absolute">Absolute pressure, zero or more.</param>
    /// <param name="barometer">Absolute pressure of the air at the place, greater than zero.</param>
    /// <param name="units">The units.</param>
    /// <param name="rounding">To which side the pressure is rounded: down is a deeper vacuum.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> or <paramref name="rounding"/> is no member of its enumeration.</exception>
    public static string GaugePressure(Pressure absolute, Pressure barometer, DisplayUnits units, RoundingMode rounding = RoundingMode.Nearest)
    {
        double pascals = Require.NotNegative(absolute.Pascals, "Pa absolute", nameof(absolute));
        return Gauge(pascals - Require.Positive(barometer.Pascals, "Pa absolute", nameof(barometer)), units, rounding);
    }

    /// <summary>The same of a pressure that is gauge already; negative is vacuum.</summary>
    /// <param name="gauge">Gauge pressure, any finite one.</param>
    /// <param name="units">The units.</param>
    /// <param name="rounding">To which side the pressure is rounded: down is a deeper vacuum.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> or <paramref name="rounding"/> is no member of its enumeration.</exception>
    public static string GaugeReading(Pressure gauge, DisplayUnits units, RoundingMode rounding = RoundingMode.Nearest) =>
        Gauge(gauge.Pascals, units, rounding);

    /// <summary>An absolute pressure: "67.6 psia", "25 mmHg absolute", "500 microns"; "466 kPa absolute", "67 Pa absolute".</summary>
    /// <param name="absolute">Absolute pressure, zero or more.</param>
    /// <param name="units">The units.</param>
    /// <param name="rounding">To which side it is rounded.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> or <paramref name="rounding"/> is no member of its enumeration.</exception>
    public static string AbsolutePressure(Pressure absolute, DisplayUnits units, RoundingMode rounding = RoundingMode.Nearest)
    {
        double pascals = Require.NotNegative(absolute.Pascals, "Pa absolute", nameof(absolute));
        if (IsInternational(units))
        {
            return Kilopascals(pascals, rounding) + " absolute";
        }

        return pascals >= LowAbsolute ? Text(pascals / PascalsPerPsi, "psia", rounding)
            : pascals >= PascalsPerMillimeterOfMercury ? Text(pascals / PascalsPerMillimeterOfMercury, "mmHg absolute", rounding)
            : Text(pascals / PascalsPerMillimeterOfMercury * 1000, "microns", rounding);
    }

    /// <summary>A depth of vacuum, positive below the air: "15 inHg of vacuum"; "50.8 kPa of vacuum".</summary>
    /// <param name="vacuum">How far below the air, zero or more.</param>
    /// <param name="units">The units.</param>
    /// <param name="rounding">To which side the depth is rounded: up is the deeper vacuum.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> or <paramref name="rounding"/> is no member of its enumeration.</exception>
    public static string Vacuum(Pressure vacuum, DisplayUnits units, RoundingMode rounding = RoundingMode.Nearest) =>
        Depth(Require.NotNegative(vacuum.Pascals, "Pa of vacuum", nameof(vacuum)), units, rounding);

    /// <summary>A difference of pressures: "2.1 psi"; "14.5 kPa", "120 Pa".</summary>
    /// <param name="difference">Any finite difference.</param>
    /// <param name="units">The units.</param>
    /// <param name="rounding">To which side it is rounded.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> or <paramref name="rounding"/> is no member of its enumeration.</exception>
    public static string PressureDifference(Pressure difference, DisplayUnits units, RoundingMode rounding = RoundingMode.Nearest)
    {
        double pascals = difference.Pascals;
        return IsInternational(units) ? Kilopascals(pascals, rounding) : Text(pascals / PascalsPerPsi, "psi", rounding);
    }

    /// <summary>A rise of pressure with temperature: "58 psi per °F"; "720 kPa per K".</summary>
    /// <param name="perKelvin">The rise for each kelvin.</param>
    /// <param name="units">The units.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> is no member of its enumeration.</exception>
    public static string PressurePerTemperature(Pressure perKelvin, DisplayUnits units) => IsInternational(units)
        ? Kilopascals(perKelvin.Pascals, RoundingMode.Nearest) + " per K"
        : Text(perKelvin.Pascals / PascalsPerPsi / 1.8, "psi per °F");

    /// <summary>A temperature: "75 °F"; "23.9 °C".</summary>
    /// <param name="temperature">Any finite temperature.</param>
    /// <param name="units">The units.</param>
    /// <param name="rounding">To which side it is rounded.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> or <paramref name="rounding"/> is no member of its enumeration.</exception>
    public static string Temperature(Temperature temperature, DisplayUnits units, RoundingMode rounding = RoundingMode.Nearest)
    {
        double celsius = temperature.Kelvins - 273.15;
        return IsInternational(units)
            ? NumberText.Fixed(celsius, 1, rounding) + " °C"
            : NumberText.Fixed((celsius * 1.8) + 32, 0, rounding) + " °F";
    }

    /// <summary>A difference of temperatures: "9 °F"; "5 K".</summary>
    /// <param name="difference">Any finite difference.</param>
    /// <param name="units">The units.</param>
    /// <param name="rounding">To which side it is rounded.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> or <paramref name="rounding"/> is no member of its enumeration.</exception>
    public static string TemperatureDifference(TemperatureDelta difference, DisplayUnits units, RoundingMode rounding = RoundingMode.Nearest)
    {
        double kelvins = difference.Kelvins;
        return IsInternational(units)
            ? NumberText.Fixed(kelvins, 1, rounding) + " K"
            : NumberText.Fixed(kelvins * 1.8, 1, rounding) + " °F";
    }

    private static string Gauge(double gauge, DisplayUnits units, RoundingMode rounding)
    {
        if (gauge < 0 && !IsNothing(gauge, units))
        {
            string depth = Depth(-gauge, units, Opposite(rounding));
            if (!depth.StartsWith("0 ", StringComparison.Ordinal))
            {
                return depth;
            }
        }

        return IsInternational(units)
            ? Kilopascals(Math.Max(gauge, 0), rounding) + " gauge"
            : NumberText.Fixed(Math.Max(gauge, 0) / PascalsPerPsi, gauge < 100 * PascalsPerPsi ? 1 : 0, rounding) + " psig";
    }

    /// <summary>Whether a vacuum is less than any gauge shows: a twentieth of an inch of mercury, 0.1 kPa.</summary>
    private static bool IsNothing(double gauge, DisplayUnits units) => -gauge < (IsInternational(units) ? 100 : 0.05 * PascalsPerInchOfMercury);

    private static string Depth(double vacuum, DisplayUnits units, RoundingMode rounding) => IsInternational(units)
        ? NumberText.Fixed(vacuum / 1000, 1, rounding) + " kPa of vacuum"
        : NumberText.Fixed(vacuum / PascalsPerInchOfMercury, vacuum > DeepVacuum ? 2 : 1, rounding) + " inHg of vacuum";

    private static string Kilopascals(double pascals, RoundingMode rounding) => Math.Abs(pascals) < 1000 && pascals != 0
        ? Text(pascals, "Pa", rounding)
        : Text(pascals / 1000, "kPa", rounding);
}
