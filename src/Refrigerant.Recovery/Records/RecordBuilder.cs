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

    /// <summary>A reading this far above the air blows out, Pa: less no gauge on site shows.</summary>
    private const double ReadsZero = 200;

    /// <summary>What a plan says it comes to, which a reading replaces.</summary>
    private static readonly string[] Outcome =
        [PlanCodes.LevelReached.Id, PlanCodes.ShareRecovered.Id, PlanCodes.LevelNotReached.Id, PlanCodes.LevelNotHeld.Id, PlanCodes.StillAboveAir.Id];

    /// <summary>What holds only where the level is reached.</summary>
    private static readonly string[] Finished = [PlanCodes.ComesBackWarm.Id, PlanCodes.PullPastLevel.Id, RuleCodes.PurgeBeforeFlame.Id];

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
            Level = Level(ledger),
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

    private LevelEntry Level(LedgerEntry ledger)
    {
        bool isRead = _facts.GaugeReading is not null;
        if (!isRead && !IsWeighed)
        {
            return LevelEntry.From(_plan.Requirement, _barometer, _plan.End.Pressure, _plan.IsLevelReached);
        }

        Pressure reached = isRead ? Reached() : _plan.End.Pressure;
        var share = new Ratio(ledger.InCylindersKilograms / ledger.ChargeKilograms, UnitsNet.Units.RatioUnit.DecimalFraction);
        bool hasShare = IsWeighed && _plan.Requirement.RequiredRecovery is Ratio required && share >= required;
        bool isAtLevel = isRead ? _plan.Requirement.IsMetBy(reached) : _plan.IsLevelReached && _plan.Verdict.Outcome != LevelOutcome.ShareRecovered && !IsShort(ledger);
        bool isReached = isAtLevel || hasShare;
        string[] replaced = isRead ? [.. Outcome, PlanCodes.OilHolds.Id] : hasShare ? Outcome : isReached ? [] : [PlanCodes.LevelReached.Id, PlanCodes.ShareRecovered.Id];
        _findings.RemoveAll(finding => replaced.Contains(finding.Code));

        if (!isReached)
        {
            _findings.RemoveAll(finding => Finished.Contains(finding.Code));
        }

        Judge(reached, isRead, isReached, hasShare ? share : null);
        return LevelEntry.From(_plan.Requirement, _barometer, reached, isReached);
    }

    /// <summary>What gauge and scale say about the level.</summary>
    private void Judge(Pressure reached, bool isRead, bool isReached, Ratio? share)
    {
        if (!isReached && isRead)
        {
            Add(
                ResidualCodes.MeasuredAboveLevel,
                Severity.Warning,
                _plan.Requirement.Source,
                $"The gauge tells {FindingValue.AbsolutePressure("reached", reached)}; the level is {FindingValue.AbsolutePressure("level", _plan.Requirement.RequiredPressure, RoundingMode.Down)}. The appliance must not be opened yet.");
        }
        else if (!isReached && _plan.IsLevelReached)
        {
            Add(
                ResidualCodes.LevelNotShown,
                Severity.Warning,
                _plan.Requirement.Source,
                $"The plan comes to the level, the weights do not show it, and no gauge was read at rest: the appliance must not be opened before one shows it.");
        }

        if (share is Ratio recovered)
        {
            Add(PlanCodes.ShareRecovered, Severity.Note, _plan.Requirement.Source, $"By the scale {FindingValue.Share("recovered", recovered, RoundingMode.Down)} of the charge is recovered, the share that the rule asks for.");
        }

        if (isReached && isRead && reached.Pascals > _barometer.Pascals + ReadsZero)
        {
            FindingValue reading = FindingValue.GaugePressure("reading", _facts.GaugeReading!.Value, RoundingMode.Up);
            Add(PlanCodes.StillAboveAir, Severity.Caution, Sources.CommonPractice, $"{reading} are left by the gauge, above the air at the place: refrigerant blows out where the appliance is opened. Open only what is meant to be opened at that pressure, or pull down to the air first.");
        }
    }

    /// <summary>Whether the scale misses more of the charge than charges told on a plate are off.</summary>
    private bool IsShort(LedgerEntry ledger) => ledger.UnexplainedKilograms > MostUnexplained * ledger.ChargeKilograms;

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
                    ? $"{missing} of the {charge} are in no account: they may still be in the appliance, as liquid behind a shut valve or in a part that the gauge does not see; or they had leaked out before, escaped, or charge, tare or a weight is wrong. Take it as liquid left until that is known."
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

    private Pressure Reached() => (_facts.Barometer ?? _plan.Job.Barometer).FromGauge(_facts.GaugeReading!.Value, nameof(RecordFacts.GaugeReading));

    private void Add(FindingCode code, Severity severity, string source, FormattableString message) =>
        _findings.Add(FindingEntry.From(new Finding(code, severity, source, message)));
}
