using System;
using System.Collections.Generic;

namespace Refrigerant.Recovery.Rules;

/// <summary>ASHRAE 34 safety groups of blends, from memory. A blend that is missing here has a group that was not found.</summary>
internal static class BlendGroups
{
    private static readonly Dictionary<string, string> Groups = Build(
        ("A1", """
            R-400 R-401A R-401B R-401C R-402A R-402B R-403A R-403B R-404A R-407A R-407B R-407C R-407D R-407E R-407F R-407G R-407H R-407I
            R-408A R-409A R-409B R-410A R-410B R-414A R-414B R-416A R-417A R-417B R-417C R-420A R-421A R-421B R-422A R-422B R-422C R-422D
            R-422E R-423A R-424A R-425A R-426A R-427A R-428A R-434A R-437A R-438A R-442A R-448A R-448B R-449A R-449B R-449C R-450A R-452A
            R-452C R-453A R-456A R-458A R-460A R-460B R-460C R-463A R-466A R-469A R-470A R-470B R-471A R-472A R-472B R-473A R-476A R-500
            R-501 R-502 R-503 R-504 R-507A R-508A R-508B R-509A R-513A R-513B R-515A R-515B
            """),
        ("A2", "R-406A R-411A R-411B R-412A R-413A R-415A R-415B R-418A R-439A R-440A R-462A R-465A R-512A"),
        ("A2L", """
            R-444A R-444B R-445A R-446A R-447A R-447B R-451A R-451B R-452B R-454A R-454B R-454C R-455A R-457A R-457B R-457C R-459A R-459B
            R-468A R-468B R-468C R-516A
            """),
        ("A3", "R-429A R-430A R-431A R-432A R-433A R-433B R-433C R-435A R-436A R-436B R-436C R-441A R-443A R-510A R-511A"),
        ("B1", "R-514A"));

    public static string? Find(string designation) => Groups.TryGetValue(designation, out string? group) ? group : null;

    private static Dictionary<string, string> Build(params (string Group, string Members)[] rows)
    {
        Dictionary<string, string> found = new(StringComparer.Ordinal);
        foreach ((string group, string members) in rows)
        {
            foreach (string member in members.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries))
            {
                found.Add(member, group);
            }
        }

        return found;
    }
}
