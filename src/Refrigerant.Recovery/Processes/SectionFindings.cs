using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Processes;

/// <summary>What a liquid port leaves in parts of the appliance that it is not on.</summary>
internal static class SectionFindings
{
    /// <summary>Liquid of less than this share of the charge needs no word.</summary>
    private const double Little = 0.01;

    /// <param name="findings">Where it is added.</param>
    /// <param name="appliance">The appliance.</param>
    /// <param name="state">The appliance at the end of the stage.</param>
    public static void Add(List<Finding> findings, Appliance appliance, ApplianceState state)
    {
        IReadOnlyList<SectionContent> sections = state.Sections;
        for (int i = 0; sections.Count > 1 && i < sections.Count; i++)
        {
            SectionContent section = sections[i];
            if (i != appliance.LiquidPortSection && section.LiquidMass.Kilograms > Little * appliance.Charge.Kilograms)
            {
                findings.Add(new Finding(
                    PlanCodes.HiddenSection,
                    Severity.Warning,
                    "restriction between the parts of the appliance",
                    $"The liquid port does not reach the section \"{FindingValue.Text("section", section.Name)}\": {FindingValue.Mass("liquid", section.LiquidMass)} of liquid stay there. Open what separates it, or draw from it too."));
            }
        }
    }
}
