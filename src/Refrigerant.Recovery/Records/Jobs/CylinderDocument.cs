using System;
using Refrigerant.Recovery.Equipment;
using UnitsNet;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A recovery cylinder. Its service pressure follows from the DOT or TC mark or the UN/ADR test pressure unless it is given.</summary>
internal sealed record CylinderDocument
{
    public const string OneOf = "give one of mark and testPressureKilopascalsGauge, or servicePressureKilopascalsGauge alone.";

    public const string DefaultLabel = "cylinder";

    /// <summary>What the technician calls it, such as "C1".</summary>
    public string? Label { get; init; }

    /// <summary>The DOT or TC mark, such as "4BA400". Give this, testPressureKilopascalsGauge, or servicePressureKilopascalsGauge alone.</summary>
    public string? Mark { get; init; }

    /// <summary>Marked test pressure of a UN/ADR cylinder.</summary>
    public double? TestPressureKilopascalsGauge { get; init; }

    /// <summary>Marked service pressure; it follows from the mark or the test pressure where it is left out.</summary>
    public double? ServicePressureKilopascalsGauge { get; init; }

    /// <summary>Water capacity (mark WC): the mass of water at 60 °F that fills it. Greater than zero.</summary>
    public required double WaterCapacityKilograms { get; init; }

    /// <summary>Tare weight (mark TW) with its valve. Greater than zero.</summary>
    public required double TareWeightKilograms { get; init; }

    /// <summary>Refrigerant already in it; none by default.</summary>
    public double? ContentKilograms { get; init; }

    /// <summary>Temperature when it is connected; that of the surroundings where it is left out.</summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>Designation of the refrigerant it holds or last held, such as "R-134a"; left out for one that is new, or cleaned and evacuated.</summary>
    public string? Refrigerant { get; init; }

    /// <summary>The day on which its requalification (retest) falls due; the time of day is ignored. Left out where unknown.</summary>
    public DateTime? RequalificationDue { get; init; }

    public static CylinderDocument From(RecoveryCylinder cylinder) => new()
    {
        Label = cylinder.Label,
        Mark = cylinder.Specification is { IsUn: false } dot ? dot.Mark : null,
        TestPressureKilopascalsGauge = cylinder.Specification is { IsUn: true, TestPressure: Pressure test } ? Exact.Kilopascals(test) : null,
        ServicePressureKilopascalsGauge = Exact.Kilopascals(cylinder.ServicePressure),
        WaterCapacityKilograms = Exact.Kilograms(cylinder.WaterCapacity),
        TareWeightKilograms = Exact.Kilograms(cylinder.TareWeight),
        ContentKilograms = Exact.Kilograms(cylinder.Content),
        TemperatureCelsius = cylinder.Temperature is Temperature temperature ? Exact.Celsius(temperature) : null,
        Refrigerant = cylinder.Refrigerant,
        RequalificationDue = cylinder.RequalificationDue,
    };

    public RecoveryCylinder ToCylinder(DocumentNode node)
    {
        Mass capacity = Exact.MassOf(WaterCapacityKilograms);
        Mass tare = Exact.MassOf(TareWeightKilograms);
        RecoveryCylinder made = (Mark, TestPressureKilopascalsGauge, ServicePressureKilopascalsGauge) switch
        {
            (string mark, null, _) => node.Build(() => RecoveryCylinder.FromMark(mark, capacity, tare)),
            (null, double test, _) => node.Build(() => RecoveryCylinder.FromTestPressure(Exact.PressureOf(test), capacity, tare)),
            (null, null, double service) => node.Build(() => new RecoveryCylinder
            {
                WaterCapacity = capacity,
                TareWeight = tare,
                ServicePressure = Exact.PressureOf(service),
            }),
            _ => throw node.Wrong(OneOf),
        };
        return node.Build(() => made with
        {
            Label = Label ?? DefaultLabel,
            ServicePressure = ServicePressureKilopascalsGauge is double pressure ? Exact.PressureOf(pressure) : made.ServicePressure,
            Content = Exact.MassOf(ContentKilograms ?? 0),
            Temperature = TemperatureCelsius is double celsius ? Exact.TemperatureOf(celsius) : null,
            Refrigerant = Refrigerant,
            RequalificationDue = RequalificationDue,
        });
    }
}
