using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Residuals;
using Refrigerant.Recovery.Rules;
using UnitsNet;

namespace Refrigerant.Recovery.Records;

/// <summary>Makes a record of a plan and of what was measured.</summary>
internal sealed class RecordBuilder
{
    /// <summary>Records of a disposal are kept for three years (40 CFR 82.156(a)(3)).</summary>
    private const int YearsKept = 3;

    private readonly RecoveryPlan _plan;
    private readonly RecordFacts _facts;
    private readonly Appliance _appliance;
    private readonly Pressure _barometer;
    private readonly List<FindingEntry> _findings;

    public RecordBuilder(RecoveryPlan plan, RecordFacts facts)
    {
        _plan = plan;
        _facts = facts.Completed(plan);
        _appliance = plan.Job.Appliance;
        _barometer = (facts.Barometer ?? plan.Job.Barometer).Pressure;
        _findings = [.. plan.Findings.Concat(facts.Log?.Check(plan.Job) ?? []).Select(FindingEntry.From)];
    }

    /// <summary>A tenth of the charge is more than charges told on a plate are off. Our choice.</summary>
    private const double MostUnexplained = 0.1;

    private bool IsWeighed => _facts.ScaleReadings.Count > 0;

    public RecoveryRecord Build()
    {
        CylinderEntry[] cylinders = Cylinders();
        LedgerEntry ledger = Ledger(cylinders.Sum(cylinder => cylinder.ReceivedKilograms));
        bool disposal = _plan.Job.Evacuation?.Purpose == OpeningPurpose.Disposal;
        double charge = _appliance.Charge.Kilograms;
        bool kept = disposal && charge > EvacuationFigures.SmallApplianceCharge && charge < EvacuationFigures.DisposalRecordCharge;
        return new RecoveryRecord
        {
            Format = RecoveryRecord.CurrentFormat,
            Company = _facts.Company,
            Location = _facts.Location,
            Date = _facts.Date.Date,
            CompletedAt = _facts.CompletedAt,
            Technician = _facts.Technician,
            Appliance = _facts.Appliance,
            Refrigerant = _appliance.Fluid.Designation,
            IsDisposal = disposal,
            KeepUntil = kept ? _facts.Date.Date.AddYears(YearsKept) : null,
            RecoveredKilograms = ledger.InCylindersKilograms,
            IsRecoveredMeasured = IsWeighed,
            Level = Level(ledger.InCylindersKilograms),
            IsLevelMeasured = _facts.GaugeReading is not null,
            ResidualKilograms = Plain.Number(ledger.VaporInApplianceKilograms + ledger.LiquidInApplianceKilograms + ledger.InOilKilograms),
            Cylinders = cylinders,
            Ledger = ledger,
            Shipments = _facts.Shipments,
            Findings = _findings,
            Cautions = [.. _plan.Cautions.Select(FindingEntry.From)],
            Rules = [.. Rules(cylinders, kept)],
            LibraryVersion = Library.Version,
            Logged = _facts.Log is null ? null : LoggedEntry.From(_plan, _facts.Log),
        };
    }

    private IEnumerable<RuleEntry> Rules(CylinderEntry[] cylinders, bool kept)
    {
        IEnumerable<RuleEntry> rules = cylinders.Select(cylinder => cylinder.LimitedBy).Prepend(RuleEntry.From(_plan.Requirement.Rule));
        return (kept ? rules.Append(RuleEntry.From(EvacuationFigures.DisposalRecord)) : rules).Distinct();
    }

    private CylinderEntry[] Cylinders()
    {
        CylinderEntry[] planned = [.. _plan.Cylinders.Select(CylinderEntry.From)];
        foreach (string label in _facts.ScaleReadings.Keys)
        {
            int found = planned.Count(cylinder => cylinder.Label == label);
            if (found != 1)
            {
                throw new ArgumentException(
                    FormattableString.Invariant($"ScaleReadings names \"{label}\", which is the label of {found} cylinders of the plan; it must be that of one."),
                    nameof(RecordFacts.ScaleReadings));
            }
        }

        return [.. (IsWeighed ? planned.Select(Weighed) : planned).Where(cylinder => cylinder.ReceivedKilograms > 0)];
    }

    private CylinderEntry Weighed(CylinderEntry planned)
    {
        double before = planned.TareWeightKilograms + planned.ContentBeforeKilograms;
        double gross = _facts.ScaleReadings.TryGetValue(planned.Label, out Mass reading)
            ? Require.Finite(reading.Kilograms, "kg", nameof(RecordFacts.ScaleReadings))
            : before;
        if (gross < before)
        {
            throw new ArgumentException(
                $"ScaleReadings has {Require.Text(gross)} kg for \"{planned.Label}\", which weighed {Require.Text(before)} kg before: check the unit and the scale's zero.",
                nameof(RecordFacts.ScaleReadings));
        }

        double content = gross - planned.TareWeightKilograms;
        if (content > planned.MaximumFillKilograms)
        {
            FindingValue limit = FindingValue.Mass("limit", UnitsNet.Mass.FromKilograms(planned.MaximumFillKilograms), RoundingMode.Down);
            Add(
                CylinderCodes.OverLimit,
                Severity.Stop,
                planned.LimitedBy.Source,
                $"\"{FindingValue.Text("cylinder", planned.Label)}\" holds {FindingValue.Kilograms("content", content)} by the scale; it may hold {limit}. Keep it cool and take refrigerant out of it before anything else.");
        }

        return planned with
        {
            ReceivedKilograms = Plain.Number(gross - before),
            GrossWeightKilograms = Plain.Number(gross),
            PressureKilopascalsAbsolute = null,
            TemperatureCelsius = null,
        };
    }

    private LevelEntry Level(double recovered)
    {
        if (_facts.GaugeReading is not Pressure)
        {
            return LevelEntry.From(_plan.Requirement, _barometer, _plan.End.Pressure, _plan.IsLevelReached);
        }

        Pressure reached = Reached();
        double share = recovered / _appliance.Charge.Kilograms;
        bool isReached = _plan.Requirement.IsMetBy(reached)
            || (_plan.Requirement.RequiredRecovery is Ratio required && share >= required.DecimalFractions);
        if (!isReached)
        {
            Add(
                ResidualCodes.MeasuredAboveLevel,
                Severity.Warning,
                _plan.Requirement.Source,
                $"The gauge tells {FindingValue.AbsolutePressure("reached", reached)}; the level is {FindingValue.AbsolutePressure("level", _plan.Requirement.RequiredPressure, RoundingMode.Down)}. The appliance must not be opened yet.");
        }

        return LevelEntry.From(_plan.Requirement, _barometer, reached, isReached);
    }

    private LedgerEntry Ledger(double received)
    {
        LedgerEntry planned = LedgerEntry.From(_plan.Ledger) with { InCylindersKilograms = Plain.Number(received) };
        if (_facts.GaugeReading is not null)
        {
            ResidualCharge left = Residual();
            planned = planned with
            {
                VaporInApplianceKilograms = Plain.Kilograms(left.Vapor),
                LiquidInApplianceKilograms = Plain.Kilograms(left.Liquid.Best),
                InOilKilograms = Plain.Kilograms(left.InOil.Best),
            };
            foreach (Finding finding in left.Findings)
            {
                _findings.Add(FindingEntry.From(finding));
            }
        }

        double unexplained = Plain.Number(planned.ChargeKilograms - planned.InCylindersKilograms - planned.VaporInApplianceKilograms
            - planned.LiquidInApplianceKilograms - planned.InOilKilograms - planned.InHosesAndMachineKilograms - planned.ReleasedKilograms);
        if (IsWeighed && Math.Abs(unexplained) > MostUnexplained * planned.ChargeKilograms)
        {
            FindingValue missing = FindingValue.Kilograms("unexplained", Math.Abs(unexplained));
            FindingValue charge = FindingValue.Kilograms("charge", planned.ChargeKilograms);
            Add(
                ResidualCodes.RecordUnexplained,
                Severity.Warning,
                "balance of mass",
                unexplained > 0
                    ? $"{missing} of the {charge} are in no account: it had leaked out before, escaped, or charge, tare or a weight is wrong."
                    : (FormattableString)$"{missing} more than the charge of {charge} were found: charge, tare or a weight is wrong, or the cylinder held something before.");
        }

        return planned with { UnexplainedKilograms = unexplained };
    }

    private ResidualCharge Residual() => ResidualCharge.Estimate(
        _appliance.Fluid,
        _appliance.InternalVolume,
        _facts.ApplianceTemperature ?? _appliance.Surroundings ?? _appliance.Temperature,
        Reached(),
        new ResidualOptions
        {
            Charge = _appliance.Charge,
            Oil = _appliance.Oil,
        });

    private Pressure Reached() => (_facts.Barometer ?? _plan.Job.Barometer).FromGauge(_facts.GaugeReading!.Value);

    private void Add(FindingCode code, Severity severity, string source, FormattableString message) =>
        _findings.Add(FindingEntry.From(new Finding(code, severity, source, message)));
}
