using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>A job with its inputs moved within their tolerances, sample by sample.</summary>
internal sealed class JobSampler
{
    private static readonly UncertainInput[] All =
    [
        UncertainInput.InternalVolume, UncertainInput.HeatExchange, UncertainInput.Charge, UncertainInput.Displacement,
        UncertainInput.Temperature, UncertainInput.Gauge, UncertainInput.Scale, UncertainInput.Oil, UncertainInput.Metal,
    ];

    private readonly RecoveryJob _job;
    private readonly InputTolerances _tolerances;
    private readonly QuasiRandom _sequence;

    public JobSampler(RecoveryJob job, InputTolerances tolerances, int seed)
    {
        _job = job;
        _tolerances = tolerances;
        _sequence = new QuasiRandom(All.Length, seed);
        Inputs =
        [
            .. All.Where(input => HalfWidth(input) > 0
                && (input != UncertainInput.Oil || job.Appliance.Oil is not null)
                && (input != UncertainInput.Metal || job.Appliance.MetalKilograms > 0)),
        ];
    }

    /// <summary>The inputs that have a tolerance.</summary>
    public IReadOnlyList<UncertainInput> Inputs { get; }

    /// <summary>How far an input is moved in a sample: relative, or in K, Pa, kg.</summary>
    public double Offset(int index, UncertainInput input) => HalfWidth(input) * ((2 * _sequence.At(index, (int)input)) - 1);

    /// <summary>The job of a sample.</summary>
    public RecoveryJob Job(int index)
    {
        Appliance appliance = _job.Appliance;
        double warmer = Offset(index, UncertainInput.Temperature);
        double heat = 1 + Offset(index, UncertainInput.HeatExchange);
        double larger = 1 + Offset(index, UncertainInput.InternalVolume);
        double fuller = 1 + Offset(index, UncertainInput.Charge);
        return _job with
        {
            Appliance = appliance with
            {
                InternalVolume = Scaled(appliance.InternalVolume, larger),
                Charge = new Mass(appliance.Charge.Kilograms * fuller, MassUnit.Kilogram),
                Sections =
                [
                    .. appliance.Sections.Select(section => section with
                    {
                        InternalVolume = Scaled(section.InternalVolume, larger),
                        Charge = new Mass(section.Charge.Kilograms * fuller, MassUnit.Kilogram),
                    }),
                ],
                Temperature = new Temperature(appliance.Temperature.Kelvins + warmer, TemperatureUnit.Kelvin),
                Surroundings = new Temperature(appliance.SurroundingsKelvin + warmer, TemperatureUnit.Kelvin),
                Oil = appliance.Oil is ApplianceOil oil
                    ? oil with { Mass = new Mass(oil.Mass.Kilograms * (1 + Offset(index, UncertainInput.Oil)), MassUnit.Kilogram) }
                    : null,
                MetalMass = new Mass(appliance.MetalKilograms * (1 + Offset(index, UncertainInput.Metal)), MassUnit.Kilogram),
                HeatResistance = new ThermalResistance(
                    appliance.HeatArea.SquareMeters / (appliance.OuterConductance * heat), ThermalResistanceUnit.SquareMeterKelvinPerWatt),
            },
            Machine = _job.Machine with
            {
                Displacement = new VolumeFlow(
                    _job.Machine.Displacement.CubicMetersPerSecond * (1 + Offset(index, UncertainInput.Displacement)), VolumeFlowUnit.CubicMeterPerSecond),
            },
            GaugeError = Offset(index, UncertainInput.Gauge),
            ScaleError = Offset(index, UncertainInput.Scale),
        };
    }

    private static Volume Scaled(Volume volume, double factor) => new(volume.CubicMeters * factor, VolumeUnit.CubicMeter);

    private double HalfWidth(UncertainInput input) => input switch
    {
        UncertainInput.InternalVolume => _tolerances.InternalVolume.DecimalFractions,
        UncertainInput.HeatExchange => _tolerances.HeatExchange.DecimalFractions,
        UncertainInput.Charge => _tolerances.Charge.DecimalFractions,
        UncertainInput.Displacement => _tolerances.Displacement.DecimalFractions,
        UncertainInput.Temperature => _tolerances.Temperature.Kelvins,
        UncertainInput.Gauge => _tolerances.Gauge.Pascals,
        UncertainInput.Oil => _tolerances.Oil.DecimalFractions,
        UncertainInput.Metal => _tolerances.Metal.DecimalFractions,
        _ => _tolerances.Scale.Kilograms,
    };
}
