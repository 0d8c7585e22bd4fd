using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Rules;

/// <summary>Ordinance 7 of 2014, art. 40(i): by the pressure at a normal temperature and by the charge.</summary>
internal sealed class JapanLevels : ILevelRules
{
    private static readonly HoldRule Hold = new(PlaceFigures.JapanHold);

    public EvacuationLevel Find(LevelQuestion question)
    {
        PropertyModel model = question.Fluid.Model;
        List<Finding> findings = [];
        (RuleFigure rule, double pascals) = At(model, question.Options.NormalTemperature?.Kelvins ?? PlaceFigures.JapanCool, question.Kilograms);
        if (question.Options.NormalTemperature is null)
        {
            (RuleFigure warmRule, double warm) = At(model, PlaceFigures.JapanWarm, question.Kilograms);
            if (warm != pascals)
            {
                findings.Add(new Finding(
                    RuleCodes.NormalTemperature,
                    Severity.Caution,
                    rule.Source,
                    $"The class of {question.Fluid.Designation} differs between {FindingValue.Kelvins("cool", PlaceFigures.JapanCool)} ({FindingValue.Pascals("level when cool", pascals)}) and {FindingValue.Kelvins("warm", PlaceFigures.JapanWarm)} ({FindingValue.Pascals("level when warm", warm)}), and the ordinance names no normal temperature: the stricter level is used."));
                (rule, pascals) = warm < pascals ? (warmRule, warm) : (rule, pascals);
            }
        }

        findings.Add(new Finding(
            RuleCodes.LevelCondition,
            Severity.Note,
            PlaceFigures.JapanHold.Source,
            $"The level counts at the recovery port and must still stand after a set time. It does not apply during servicing where what stays in the circuit cannot escape."));
        return new EvacuationLevel(rule, LevelKind.AbsolutePressure, pascals) { Hold = Hold, Findings = findings };
    }

    private static (RuleFigure Rule, double Pascals) At(PropertyModel model, double kelvins, double charge)
    {
        double pressure = kelvins < model.CriticalTemperature ? model.SaturationAtTemperature(kelvins).Bubble.Pressure : double.PositiveInfinity;
        return pressure < PlaceFigures.JapanLow ? (PlaceFigures.JapanLowGas, 0.03e6)
            : pressure >= PlaceFigures.JapanHigh ? (PlaceFigures.JapanHighGas, 0.10e6)
            : charge < PlaceFigures.JapanCharge ? (PlaceFigures.JapanSmall, 0.10e6)
            : (PlaceFigures.JapanLarge, 0.09e6);
    }
}
