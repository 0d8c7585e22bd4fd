using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Records;

/// <summary>What a record holds beyond the plan: who, where and when, and what was read on scales and gauges. Immutable.</summary>
public sealed record RecordFacts
{
    /// <summary>For an initializer.</summary>
    public RecordFacts()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="company">See <see cref="Company"/>.</param>
    /// <param name="location">See <see cref="Location"/>.</param>
    /// <param name="date">See <see cref="Date"/>.</param>
    /// <param name="completedAt">See <see cref="CompletedAt"/>.</param>
    /// <param name="technician">See <see cref="Technician"/>.</param>
    /// <param name="appliance">See <see cref="Appliance"/>.</param>
    /// <param name="scaleReadings">See <see cref="ScaleReadings"/>.</param>
    /// <param name="gaugeReading">See <see cref="GaugeReading"/>.</param>
    /// <param name="log">See <see cref="Log"/>.</param>
    /// <param name="barometer">See <see cref="Barometer"/>.</param>
    /// <param name="applianceTemperature">See <see cref="ApplianceTemperature"/>.</param>
    /// <param name="shipments">See <see cref="Shipments"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public RecordFacts(
        string company,
        string location,
        DateTime date,
        DateTimeOffset? completedAt = null,
        string? technician = null,
        string? appliance = null,
        IReadOnlyDictionary<string, Mass>? scaleReadings = null,
        Pressure? gaugeReading = null,
        JobLog? log = null,
        Barometer? barometer = null,
        Temperature? applianceTemperature = null,
        IReadOnlyList<ShipmentEntry>? shipments = null)
    {
        Company = company;
        Location = location;
        Date = date;
        CompletedAt = completedAt ?? CompletedAt;
        Technician = technician ?? Technician;
        Appliance = appliance ?? Appliance;
        ScaleReadings = scaleReadings ?? ScaleReadings;
        GaugeReading = gaugeReading ?? GaugeReading;
        Log = log ?? Log;
        Barometer = barometer ?? Barometer;
        ApplianceTemperature = applianceTemperature ?? ApplianceTemperature;
        Shipments = shipments ?? Shipments;
    }

    /// <summary>Company name (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    /// <exception cref="ArgumentException">Blank.</exception>
    public required string Company { get; init => field = Require.NotEmpty(value, nameof(Company)); }

    /// <summary>Location of the appliance (40 CFR 82.156(a)(3)).</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    /// <exception cref="ArgumentException">Blank.</exception>
    public required string Location { get; init => field = Require.NotEmpty(value, nameof(Location)); }

    /// <summary>Date of the recovery (40 CFR 82.156(a)(3)); the time of day is ignored.</summary>
    /// <exception cref="ArgumentException">No day: the default of its type.</exception>
    public required DateTime Date { get; init => field = Require.Given(value, nameof(Date)); }

    /// <summary>The moment at which it was completed; null where not noted.</summary>
    public DateTimeOffset? CompletedAt { get; init; }

    /// <summary>Who did it, with the certificate where one is held; null where not noted.</summary>
    public string? Technician { get; init; }

    /// <summary>What the refrigerant was taken from, in words; null where not noted.</summary>
    public string? Appliance { get; init; }

    /// <summary>
    /// What the scale showed after the job, by the label of the cylinder. Where readings are given a cylinder without one received nothing;
    /// none by default, and the planned masses stand.
    /// </summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public IReadOnlyDictionary<string, Mass> ScaleReadings { get; init => field = Copy(value); } = Copy(new Dictionary<string, Mass>());

    /// <summary>What the gauge on the appliance showed at the end of the hold, negative for vacuum; null where it was not read.</summary>
    public Pressure? GaugeReading { get; init; }

    /// <summary>
    /// The log of the job; null where none was kept. Where they are not given, the last weight of each cylinder in it becomes its scale reading, and the
    /// last pressure with the machine at rest the gauge reading; the record has the course, planned beside measured.
    /// </summary>
    public JobLog? Log { get; init; }

    /// <summary>The air at the place during the reading; null for the barometer of the job.</summary>
    public Barometer? Barometer { get; init; }

    /// <summary>Temperature of the appliance at the reading; null for that of its surroundings.</summary>
    public Temperature? ApplianceTemperature { get; init; }

    /// <summary>What was sent for reclamation or destruction; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    public IReadOnlyList<ShipmentEntry> Shipments { get; init => field = Require.Copy(value, nameof(Shipments)); } = new ValueList<ShipmentEntry>([]);

    /// <summary>Date and place.</summary>
    public override string ToString() => FormattableString.Invariant($"{Date:yyyy-MM-dd}, {Location}: {ScaleReadings.Count} scale readings");

    /// <summary>The facts with what the log tells put in where it was not given.</summary>
    internal RecordFacts Completed(RecoveryPlan plan)
    {
        if (Log is null)
        {
            return this;
        }

        var weights = new Dictionary<string, Mass>();
        string? label = plan.Job.Cylinders.Count > 0 ? plan.Job.Cylinders[0].Label : null;
        Pressure? rest = null;
        foreach (JobReading reading in Log.Readings)
        {
            label = reading.Cylinder ?? label;
            if (label is not null && reading.GrossWeight is Mass gross)
            {
                weights[label] = gross;
            }

            rest = reading.MachineRunning ? null : reading.SuctionGaugePressure ?? rest;
        }

        return this with { ScaleReadings = ScaleReadings.Count > 0 ? ScaleReadings : weights, GaugeReading = GaugeReading ?? rest };
    }

    private static ValueMap<string, Mass> Copy(IReadOnlyDictionary<string, Mass> readings)
    {
        var copy = new Dictionary<string, Mass>(StringComparer.Ordinal);
        foreach (KeyValuePair<string, Mass> reading in Require.NotNull(readings, nameof(ScaleReadings)))
        {
            copy.Add(reading.Key, reading.Value);
        }

        return new ValueMap<string, Mass>(copy);
    }
}
