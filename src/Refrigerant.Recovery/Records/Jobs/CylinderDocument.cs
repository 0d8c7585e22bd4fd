using System;
using Refrigerant.Recovery.Equipment;
using UnitsNet;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A recovery cylinder. Its service pressure follows from the DOT mark or the UN/ADR test pressure unless it is given.</summary>
internal sealed record CylinderDocument
{
    public string? Label { get; init; }

    public string? Mark { get; init; }

    public double? TestPressureKilopascalsGauge { get; init; }

    public double? ServicePressureKilopascalsGauge { get; init; }

    public required double WaterCapacityKilograms { get; init; }

    public required double TareWeightKilograms { get; init; }

    public double? ContentKilograms { get; init; }

    public string? Refrigerant { get; init; }

    public DateTime? RequalificationDue { get; init; }

    public static CylinderDocument From(RecoveryCylinder cylinder) => new()
    {
        Label = cylinder.Label,
        Mark = cylinder.Specification is { IsUn: false } dot ? dot.Mark : null,
        TestPressureKilopascalsGauge = cylinder.Specification is { IsUn: true, TestPressure: Pressure test } ? Plain.Kilopascals(test) : null,
        ServicePressureKilopascalsGauge = Plain.Kilopascals(cylinder.ServicePressure),
        WaterCapacityKilograms = Plain.Kilograms(cylinder.WaterCapacity),
        TareWeightKilograms = Plain.Kilograms(cylinder.TareWeight),
        ContentKilograms = Plain.Kilograms(cylinder.Content),
        Refrigerant = cylinder.Refrigerant,
        RequalificationDue = cylinder.RequalificationDue,
    };

    public RecoveryCylinder ToCylinder(DocumentNode node)
    {
        Mass capacity = Plain.MassOf(WaterCapacityKilograms);
        Mass tare = Plain.MassOf(TareWeightKilograms);
        RecoveryCylinder made = (Mark, TestPressureKilopascalsGauge, ServicePressureKilopascalsGauge) switch
        {
            (string mark, null, _) => node.Build(() => RecoveryCylinder.FromMark(mark, capacity, tare)),
            (null, double test, _) => node.Build(() => RecoveryCylinder.FromTestPressure(Plain.PressureOf(test), capacity, tare)),
            (null, null, double service) => node.Build(() => new RecoveryCylinder
            {
                WaterCapacity = capacity,
                TareWeight = tare,
                ServicePressure = Plain.PressureOf(service),
            }),
            _ => throw node.Wrong("give one of mark and testPressureKilopascalsGauge, or servicePressureKilopascalsGauge alone."),
        };
        return node.Build(() => made with
        {
            Label = Label ?? made.Label,
            ServicePressure = ServicePressureKilopascalsGauge is double pressure ? Plain.PressureOf(pressure) : made.ServicePressure,
            Content = Plain.MassOf(ContentKilograms ?? 0),
            Refrigerant = Refrigerant,
            RequalificationDue = RequalificationDue,
        });
    }
}
