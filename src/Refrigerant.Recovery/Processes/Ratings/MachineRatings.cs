using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>The figures that a recovery machine is sold by. Immutable.</summary>
public sealed record MachineRatings
{
    /// <summary>For an initializer.</summary>
    public MachineRatings()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="fluid">See <see cref="Fluid"/>.</param>
    /// <param name="temperature">See <see cref="Temperature"/>.</param>
    /// <param name="pushPullRate">See <see cref="PushPullRate"/>.</param>
    /// <param name="vaporRate">See <see cref="VaporRate"/>.</param>
    /// <param name="vaporBasis">See <see cref="VaporBasis"/>.</param>
    /// <param name="ratingAppliance">See <see cref="RatingAppliance"/>.</param>
    /// <param name="finalVacuum">See <see cref="FinalVacuum"/>.</param>
    /// <param name="apparatus">See <see cref="Apparatus"/>.</param>
    /// <param name="hoses">See <see cref="Hoses"/>.</param>
    /// <param name="template">See <see cref="Template"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public MachineRatings(
        Fluid fluid,
        Temperature? temperature = null,
        MassFlow? pushPullRate = null,
        MassFlow? vaporRate = null,
        VaporRateBasis? vaporBasis = null,
        Appliance? ratingAppliance = null,
        Pressure? finalVacuum = null,
        RatingApparatus? apparatus = null,
        HoseSet? hoses = null,
        RecoveryMachine? template = null)
    {
        Fluid = fluid;
        Temperature = temperature ?? Temperature;
        PushPullRate = pushPullRate ?? PushPullRate;
        VaporRate = vaporRate ?? VaporRate;
        VaporBasis = vaporBasis ?? VaporBasis;
        RatingAppliance = ratingAppliance ?? RatingAppliance;
        FinalVacuum = finalVacuum ?? FinalVacuum;
        Apparatus = apparatus ?? Apparatus;
        Hoses = hoses ?? Hoses;
        Template = template ?? Template;
    }

    /// <summary>The refrigerant of the ratings.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public required Fluid Fluid
    {
        get;
        init => field = Require.NotNull(value, nameof(Fluid));
    }

    /// <summary>Rating temperature; 24 °C by default (40 CFR 82 Subpart F Appendix B3, 7.1.1), 40 °C for a high-temperature vapor rate.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 250 K to 350 K.</exception>
    public Temperature Temperature
    {
        get;
        init
        {
            Require.InRange(value.Kelvins, 250, 350, "K", nameof(Temperature));
            field = value;
        }
    }

    = new(297.15, TemperatureUnit.Kelvin);

    /// <summary>Push-pull liquid rate; null where none is published.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 1e-6 to 1000 kg/s.</exception>
    public MassFlow? PushPullRate
    {
        get;
        init => field = Valid(value, nameof(PushPullRate));
    }

    /// <summary>Vapor rate; null where none is published.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 1e-6 to 1000 kg/s.</exception>
    public MassFlow? VaporRate
    {
        get;
        init => field = Valid(value, nameof(VaporRate));
    }

    /// <summary>How the vapor rate was measured.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    public VaporRateBasis VaporBasis { get; init => field = Require.Defined(value, nameof(VaporBasis)); }

    /// <summary>The appliance that an average vapor rate was measured on; needed with <see cref="VaporRateBasis.AverageOfAppliance"/>.</summary>
    public Appliance? RatingAppliance { get; init; }

    /// <summary>Final vacuum, absolute, read one minute after the valves close; null where none is published.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 10 Pa to 1 MPa.</exception>
    public Pressure? FinalVacuum
    {
        get;
        init
        {
            if (value is Pressure given)
            {
                Require.InRange(given.Pascals, 10, 1e6, "Pa", nameof(FinalVacuum));
            }

            field = value;
        }
    }

    /// <summary>The apparatus that it was rated on.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    public RatingApparatus Apparatus { get; init => field = Require.Defined(value, nameof(Apparatus)); }

    /// <summary>The hoses of the rating; those typical of the apparatus where it is null.</summary>
    public HoseSet? Hoses { get; init; }

    /// <summary>A machine whose other properties (exponent, condenser, switches) the fitted one takes over; typical ones where it is null.</summary>
    public RecoveryMachine? Template { get; init; }

    /// <summary>Checks that the ratings suffice.</summary>
    internal void Validate(string parameter)
    {
        if (PushPullRate is null && VaporRate is null)
        {
            throw new ArgumentException("Neither a push-pull nor a vapor rate is given; one of them is needed to find the displacement.", parameter);
        }

        if (VaporRate is not null && VaporBasis == VaporRateBasis.AverageOfAppliance && (RatingAppliance is null || FinalVacuum is null))
        {
            throw new ArgumentException("An average vapor rate needs RatingAppliance and FinalVacuum: what it was averaged over.", parameter);
        }

        PropertyRange range = Fluid.Model.Range;
        if (!(Temperature.Kelvins < range.MaximumSaturationTemperature) || !(Temperature.Kelvins > range.MinimumTemperature))
        {
            throw new PropertyRangeException(
                Fluid.Designation, nameof(Temperature), Temperature.Kelvins, range.MinimumTemperature, range.MaximumSaturationTemperature, "K", Fluid.Model.Source);
        }
    }

    private static MassFlow? Valid(MassFlow? rate, string parameter)
    {
        if (rate is MassFlow given)
        {
            Require.InRange(given.KilogramsPerSecond, 1e-6, 1000, "kg/s", parameter);
        }

        return rate;
    }

    /// <summary>Refrigerant and the figures that are published, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Fluid.Designation} at {Temperature.DegreesCelsius:G4} °C")
        + (PushPullRate is MassFlow push ? FormattableString.Invariant($", push-pull {push.KilogramsPerSecond:G4} kg/s") : string.Empty)
        + (VaporRate is MassFlow vapor ? FormattableString.Invariant($", vapor {vapor.KilogramsPerSecond:G4} kg/s ({VaporBasis})") : string.Empty)
        + (FinalVacuum is Pressure vacuum ? FormattableString.Invariant($", down to {vacuum.Kilopascals:G4} kPa absolute") : string.Empty);
}
