using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>The parts of a job document.</summary>
internal sealed class JobParts(FluidResolver? fluids) : DocumentParts
{
    /// <summary>What stands in for a part of a job that is wrong while the rest is looked at.</summary>
    private static readonly Dictionary<string, string> Whole = new()
    {
        ["appliance"] = """{"refrigerant":"R-134a","chargeKilograms":1,"internalVolumeLiters":10,"temperatureCelsius":20}""",
        ["machine"] = """{"displacementLitersPerSecond":0.5}""",
        ["hoses"] = """{"vaporSide":[{"lengthMeters":1,"innerDiameterMillimeters":8}]}""",
        ["cylinders"] = "[]",
    };

    private static readonly string[] CylinderKinds = ["mark", "testPressureKilopascalsGauge", "servicePressureKilopascalsGauge"];

    public override void Make(object part, DocumentNode node) => _ = part switch
    {
        JobDocument job => job.ToJob(node, fluids),
        ApplianceDocument appliance => appliance.ToAppliance(node, fluids),
        SectionDocument section => section.ToSection(node),
        ConnectionDocument connection => connection.ToConnection(node),
        OilDocument oil => oil.ToOil(node),
        WaterDocument water => water.ToWater(node),
        BlendDocument blend => blend.ToFluid(node),
        MachineDocument machine => machine.ToMachine(node),
        CondenserDocument condenser => condenser.ToCondenser(node),
        BodyDocument body => body.ToBody(node),
        HoseSetDocument hoses => hoses.ToHoses(node),
        HoseDocument hose => hose.ToHose(node),
        FittingDocument fitting => fitting.ToFitting(node),
        CylinderDocument cylinder => cylinder.ToCylinder(node),
        BarometerDocument barometer => barometer.ToBarometer(node),
        EvacuationDocument evacuation => evacuation.ToOptions(node),
        OwnRulesDocument rules => rules.ToRules(node),
        OwnFillRulesDocument rules => rules.ToRules(node),
        TimesDocument times => times.ToTimes(node),
        AidsDocument aids => aids.ToAids(node),
        MachinePastDocument past => past.ToPast(node, fluids),
        _ => (object?)null,
    };

    public override void CheckText(Type owner, string member, string text, DocumentNode place)
    {
        switch (member)
        {
            case "refrigerant" when owner == typeof(ApplianceDocument) || owner == typeof(MachinePastDocument):
                place.Build(() => fluids?.Invoke(text) ?? Fluid.Get(text));
                break;
            case "refrigerant" when owner == typeof(ComponentDocument):
                place.Build(() => Fluid.Get(text));
                break;
            case "mark":
                place.Build(() => CylinderSpecification.FromMark(text));
                break;
            case "format" when text != JobDocument.CurrentFormat:
                throw place.Wrong($"it must be \"{JobDocument.CurrentFormat}\", the format that this version reads.");
            default:
                break;
        }
    }

    public override IEnumerable<(DocumentNode Place, string Reason)> Contradictions(Type owner, DocumentNode node) => JobContradictions.In(owner, node);

    public override void Mend(Type owner, HashSet<string> wrong, Dictionary<string, string> standIns)
    {
        if (owner == typeof(JobDocument))
        {
            foreach (string member in Whole.Keys.Where(wrong.Contains))
            {
                standIns[member] = Whole[member];
            }
        }
        else if (owner == typeof(ApplianceDocument) && wrong.Overlaps(["refrigerant", "blend"]))
        {
            wrong.UnionWith(["refrigerant", "blend"]);
            standIns["refrigerant"] = "\"R-134a\"";
        }
        else if (owner == typeof(MachinePastDocument) && wrong.Overlaps(["refrigerant", "blend"]))
        {
            wrong.UnionWith(["refrigerant", "blend"]);
        }
        else if (owner == typeof(CylinderDocument) && wrong.Overlaps(CylinderKinds))
        {
            wrong.UnionWith(CylinderKinds);
            standIns["servicePressureKilopascalsGauge"] = "2800";
        }
    }
}
