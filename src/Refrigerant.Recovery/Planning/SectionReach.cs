using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Planning;

/// <summary>From which parts of an appliance refrigerant comes to one of them.</summary>
internal static class SectionReach
{
    /// <summary>A part each: whether it is that one, or connections lead from it there, check valves only in their direction.</summary>
    public static bool[] To(Appliance appliance, int port)
    {
        string[] names = [.. appliance.Sections.Select(section => section.Name)];
        var leads = new bool[Math.Max(1, names.Length)];
        leads[port] = true;
        for (bool changed = true; changed;)
        {
            changed = false;
            foreach (SectionConnection connection in appliance.Connections)
            {
                int from = Array.IndexOf(names, connection.From);
                int to = Array.IndexOf(names, connection.To);
                changed |= (leads[to] && !leads[from]) || (leads[from] && !leads[to] && !connection.IsCheckValve);
                leads[from] |= leads[to];
                leads[to] |= leads[from] && !connection.IsCheckValve;
            }
        }

        return leads;
    }
}
