using System;
using System.Globalization;
using System.Linq;

namespace Refrigerant.Recovery.Oils;

/// <summary>The family of a pure refrigerant from its number.</summary>
/// <remarks>
/// ISO 817 and ASHRAE 34: the digits are double bonds (left out where none), carbon − 1, hydrogen + 1, fluorine; a leading C for a ring, E for an ether;
/// chlorine takes what is left of 2·(C + 1) − 2·(double bonds and rings). 600 to 609 are hydrocarbons, 700 to 799 inorganic, by molar mass.
/// </remarks>
internal static class SoluteFamilies
{
    private const int Hydrocarbons = 600;
    private const int Inorganic = 700;
    private const int Unsaturated = 1000;

    /// <summary>The family; a designation that is no number counts as fluorinated.</summary>
    public static SoluteFamily Of(string designation)
    {
        string name = designation.StartsWith("R", StringComparison.OrdinalIgnoreCase) ? designation.Substring(1).TrimStart('-') : designation;
        if (name.StartsWith("E", StringComparison.Ordinal))
        {
            return SoluteFamily.Hydrocarbon;
        }

        bool ring = name.StartsWith("C", StringComparison.Ordinal);
        string digits = new([.. (ring ? name.Substring(1) : name).TakeWhile(c => c is >= '0' and <= '9')]);
        if (!int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out int number))
        {
            return SoluteFamily.Fluorinated;
        }

        if (number is >= Hydrocarbons and < Unsaturated)
        {
            return number < Inorganic ? SoluteFamily.Hydrocarbon
                : number == 717 ? SoluteFamily.Ammonia
                : number == 744 ? SoluteFamily.CarbonDioxide
                : SoluteFamily.Fluorinated;
        }

        int carbon = (number / 100 % 10) + 1;
        int hydrogen = (number / 10 % 10) - 1;
        int fluorine = number % 10;
        int chlorine = (2 * (carbon + 1)) - (2 * (number / Unsaturated)) - (ring ? 2 : 0) - hydrogen - fluorine;
        bool iodine = name.Contains("I");
        return chlorine > 0 && !iodine ? SoluteFamily.Chlorinated
            : fluorine > 0 ? SoluteFamily.Fluorinated
            : SoluteFamily.Hydrocarbon;
    }
}
