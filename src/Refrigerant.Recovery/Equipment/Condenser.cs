using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Equipment;

/// <summary>The condenser of a recovery machine, by what it rejects at a temperature difference. Immutable.</summary>
public sealed record Condenser
{
    /// <summary>For an initializer.</summary>
    public Condenser()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="ratedDuty">See <see cref="RatedDuty"/>.</param>
    /// <param name="ratedDifference">See <see cref="RatedDifference"/>.</param>
    /// <param name="cooling">See <see cref="Cooling"/>.</param>
    /// <param name="coolantTemperature">See <see cref="CoolantTemperature"/>.</param>
    /// <param name="subcooling">See <see cref="Subcooling"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public Condenser(
        Power ratedDuty,
        TemperatureDelta? ratedDifference = null,
        CondenserCooling? cooling = null,
        Temperature? coolantTemperature = null,
        TemperatureDelta? subcooling = null)
    {
        RatedDuty = ratedDuty;
        RatedDifference = ratedDifference ?? RatedDifference;
        Cooling = cooling ?? Cooling;
        CoolantTemperature = coolantTemperature ?? CoolantTemperature;
        Subcooling = subcooling ?? Subcooling;
    }

    /// <summary>Heat it rejects at <see cref="RatedDifference"/>, 0 to 100 MW; 0 means that it does not condense.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Power RatedDuty
    {
        get;
        init
        {
            Require.InRange(Require.Watts(value, nameof(RatedDuty)), 0, 1e8, "W", nameof(RatedDuty));
            field = Held.Watts(value);
        }
    }

    /// <summary>Difference between condensing and coolant temperature of the rating, 0.1 K to 200 K; 15 K by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public TemperatureDelta RatedDifference
    {
        get;
        init
        {
            Require.InRange(value.Kelvins, 0.1, 200, "K", nameof(RatedDifference));
            field = Held.Kelvins(value);
        }
    }

    = new(15, TemperatureDeltaUnit.Kelvin);

    /// <summary>Whether water or air takes the heat.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    public CondenserCooling Cooling { get; init => field = Require.Defined(value, nameof(Cooling)); }

    /// <summary>Temperature of the air or water that enters; the surroundings of the appliance where it is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 200 K to 400 K.</exception>
    public Temperature? CoolantTemperature
    {
        get;
        init
        {
            if (value is Temperature given)
            {
                Require.Kelvins(given, 200, 400, nameof(CoolantTemperature));
            }

            field = Held.Celsius(value);
        }
    }

    /// <summary>Subcooling below the condensing temperature that it reaches where its duty allows, 0 K to 50 K; 3 K by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public TemperatureDelta Subcooling
    {
        get;
        init
        {
            Require.InRange(value.Kelvins, 0, 50, "K", nameof(Subcooling));
            field = Held.Kelvins(value);
        }
    }

    = new(3, TemperatureDeltaUnit.Kelvin);

    /// <summary>Duty for each kelvin of difference, W/K.</summary>
    internal double Conductance => (double)RatedDuty.Watts / RatedDifference.Kelvins;

    /// <summary>Duty, difference and what takes the heat.</summary>
    public override string ToString() => $"{Require.Text((double)RatedDuty.Watts)} W at {Require.Text(RatedDifference.Kelvins)} K to {Cooling}";
}
