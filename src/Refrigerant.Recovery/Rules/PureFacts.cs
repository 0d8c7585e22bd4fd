using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Rules;

/// <summary>What is published on a pure refrigerant. A cell that is empty was not found; it is never guessed.</summary>
internal sealed class PureFacts
{
    private const string GwpSource =
        "IPCC AR4 (2007), AR5 (2013) and AR6 (2021, WG I table 7.SM.7), as collected in openclimatedata/globalwarmingpotentials";

    private const string GroupSource = "ASHRAE Standard 34";

    private readonly string[] _gwp;
    private readonly Evidence _gwpEvidence;

    private PureFacts(
        string designation,
        string name,
        SubstanceFamily family,
        string group,
        string ozone,
        string fourth,
        string fifth,
        string sixth,
        Evidence gwpEvidence = Evidence.ReadSecondHand)
    {
        Designation = designation;
        Name = name;
        Family = family;
        Group = group.Length == 0 ? null : new SourcedText(group, GroupSource, Evidence.FromMemory);
        Ozone = Depletion(family, ozone);
        _gwp = [fourth, fifth, sixth];
        _gwpEvidence = gwpEvidence;
    }

    public static IReadOnlyList<PureFacts> All { get; } =
    [
        new("R-11", "trichlorofluoromethane", SubstanceFamily.Cfc, "A1", "1", "4750", "4660", "6230"),
        new("R-12", "dichlorodifluoromethane", SubstanceFamily.Cfc, "A1", "1", "10900", "10200", "12500"),
        new("R-13", "chlorotrifluoromethane", SubstanceFamily.Cfc, "A1", "1", "14400", "13900", "16200"),
        new("R-13I1", "trifluoroiodomethane", SubstanceFamily.Fluoroiodocarbon, "A1", "", "", "0.4", "", Evidence.FromMemory),
        new("R-14", "tetrafluoromethane", SubstanceFamily.Hfc, "A1", "0", "7390", "6630", "7380", Evidence.FromMemory),
        new("R-21", "dichlorofluoromethane", SubstanceFamily.Hcfc, "B1", "0.04", "151", "148", "160", Evidence.FromMemory),
        new("R-22", "chlorodifluoromethane", SubstanceFamily.Hcfc, "A1", "0.055", "1810", "1760", "1960"),
        new("R-23", "trifluoromethane", SubstanceFamily.Hfc, "A1", "0", "14800", "12400", "14600"),
        new("R-32", "difluoromethane", SubstanceFamily.Hfc, "A2L", "0", "675", "677", "771"),
        new("R-40", "chloromethane", SubstanceFamily.Hcfc, "B2", "", "13", "12", "5.54", Evidence.FromMemory),
        new("R-41", "fluoromethane", SubstanceFamily.Hfc, "", "0", "92", "116", "135"),
        new("R-113", "1,1,2-trichloro-1,2,2-trifluoroethane", SubstanceFamily.Cfc, "A1", "0.8", "6130", "5820", "6520"),
        new("R-114", "1,2-dichloro-1,1,2,2-tetrafluoroethane", SubstanceFamily.Cfc, "A1", "1", "10000", "8590", "9430"),
        new("R-115", "chloropentafluoroethane", SubstanceFamily.Cfc, "A1", "0.6", "7370", "7670", "9600"),
        new("R-116", "hexafluoroethane", SubstanceFamily.Hfc, "A1", "0", "12200", "11100", "12400"),
        new("R-123", "2,2-dichloro-1,1,1-trifluoroethane", SubstanceFamily.Hcfc, "B1", "0.02", "77", "79", "90.4"),
        new("R-124", "2-chloro-1,1,1,2-tetrafluoroethane", SubstanceFamily.Hcfc, "A1", "0.022", "609", "527", "597"),
        new("R-125", "pentafluoroethane", SubstanceFamily.Hfc, "A1", "0", "3500", "3170", "3740"),
        new("R-134a", "1,1,1,2-tetrafluoroethane", SubstanceFamily.Hfc, "A1", "0", "1430", "1300", "1530"),
        new("R-141b", "1,1-dichloro-1-fluoroethane", SubstanceFamily.Hcfc, "", "0.11", "725", "782", "860"),
        new("R-142b", "1-chloro-1,1-difluoroethane", SubstanceFamily.Hcfc, "A2", "0.065", "2310", "1980", "2300"),
        new("R-143a", "1,1,1-trifluoroethane", SubstanceFamily.Hfc, "A2L", "0", "4470", "4800", "5810"),
        new("R-152a", "1,1-difluoroethane", SubstanceFamily.Hfc, "A2", "0", "124", "138", "164"),
        new("R-161", "fluoroethane", SubstanceFamily.Hfc, "", "0", "12", "4", "4.84"),
        new("R-170", "ethane", SubstanceFamily.Hydrocarbon, "A3", "0", "", "", ""),
        new("R-218", "octafluoropropane", SubstanceFamily.Hfc, "A1", "0", "8830", "8900", "9290"),
        new("R-227ea", "1,1,1,2,3,3,3-heptafluoropropane", SubstanceFamily.Hfc, "A1", "0", "3220", "3350", "3600"),
        new("R-236ea", "1,1,1,2,3,3-hexafluoropropane", SubstanceFamily.Hfc, "", "0", "1370", "1330", "1500", Evidence.FromMemory),
        new("R-236fa", "1,1,1,3,3,3-hexafluoropropane", SubstanceFamily.Hfc, "A1", "0", "9810", "8060", "8690"),
        new("R-245ca", "1,1,2,2,3-pentafluoropropane", SubstanceFamily.Hfc, "", "0", "693", "716", "787", Evidence.FromMemory),
        new("R-245fa", "1,1,1,3,3-pentafluoropropane", SubstanceFamily.Hfc, "B1", "0", "1030", "858", "962"),
        new("R-290", "propane", SubstanceFamily.Hydrocarbon, "A3", "0", "3", "", "0.02", Evidence.FromMemory),
        new("R-C318", "octafluorocyclobutane", SubstanceFamily.Hfc, "A1", "0", "10300", "9540", "10200"),
        new("R-365mfc", "1,1,1,3,3-pentafluorobutane", SubstanceFamily.Hfc, "", "0", "794", "804", "914"),
        new("R-600", "butane", SubstanceFamily.Hydrocarbon, "A3", "0", "4", "", "0.006", Evidence.FromMemory),
        new("R-600a", "isobutane", SubstanceFamily.Hydrocarbon, "A3", "0", "3", "", "", Evidence.FromMemory),
        new("R-601", "pentane", SubstanceFamily.Hydrocarbon, "A3", "0", "5", "", "", Evidence.FromMemory),
        new("R-601a", "isopentane", SubstanceFamily.Hydrocarbon, "A3", "0", "5", "", "", Evidence.FromMemory),
        new("R-717", "ammonia", SubstanceFamily.Ammonia, "B2L", "0", "0", "0", "0", Evidence.FromMemory),
        new("R-744", "carbon dioxide", SubstanceFamily.CarbonDioxide, "A1", "0", "1", "1", "1"),
        new("R-1130(E)", "trans-1,2-dichloroethene", SubstanceFamily.Hfo, "B2", "0.00024", "", "", "5", Evidence.FromMemory),
        new("R-1132(E)", "trans-1,2-difluoroethene", SubstanceFamily.Hfo, "", "0", "", "", ""),
        new("R-1132a", "1,1-difluoroethene", SubstanceFamily.Hfo, "A2", "0", "", "<1", "0.052", Evidence.FromMemory),
        new("R-1224yd(Z)", "(Z)-1-chloro-2,3,3,3-tetrafluoropropene", SubstanceFamily.Hfo, "A1", "0.00012", "", "", ""),
        new("R-1233zd(E)", "trans-1-chloro-3,3,3-trifluoropropene", SubstanceFamily.Hfo, "A1", "0.0003", "4.5", "1", "3.88", Evidence.FromMemory),
        new("R-1234yf", "2,3,3,3-tetrafluoropropene", SubstanceFamily.Hfo, "A2L", "0", "4", "<1", "0.501", Evidence.FromMemory),
        new("R-1234ze(E)", "trans-1,3,3,3-tetrafluoropropene", SubstanceFamily.Hfo, "A2L", "0", "7", "<1", "1.37", Evidence.FromMemory),
        new("R-1234ze(Z)", "cis-1,3,3,3-tetrafluoropropene", SubstanceFamily.Hfo, "", "0", "", "", ""),
        new("R-1243zf", "3,3,3-trifluoropropene", SubstanceFamily.Hfo, "A2", "0", "", "<1", "0.261", Evidence.FromMemory),
        new("R-1270", "propene", SubstanceFamily.Hydrocarbon, "A3", "0", "2", "", "", Evidence.FromMemory),
        new("R-1336mzz(E)", "trans-1,1,1,4,4,4-hexafluoro-2-butene", SubstanceFamily.Hfo, "A1", "0", "", "", "17.9", Evidence.FromMemory),
        new("R-1336mzz(Z)", "cis-1,1,1,4,4,4-hexafluoro-2-butene", SubstanceFamily.Hfo, "A1", "0", "9", "2", "2.08", Evidence.FromMemory),
        new("R-E170", "dimethyl ether", SubstanceFamily.Hydrocarbon, "A3", "0", "1", "1", "", Evidence.FromMemory),
    ];

    public string Designation { get; }

    public string Name { get; }

    public SubstanceFamily Family { get; }

    public SourcedText? Group { get; }

    public SourcedFigure? Ozone { get; }

    /// <summary>Oils in customary use; by family, as the trade pairs them.</summary>
    public OilFamilies Oils => Family switch
    {
        SubstanceFamily.Cfc or SubstanceFamily.Hcfc => OilFamilies.Mineral,
        SubstanceFamily.Hydrocarbon => OilFamilies.Mineral | OilFamilies.PolyolEster,
        SubstanceFamily.Ammonia => OilFamilies.Mineral | OilFamilies.Polyalphaolefin,
        SubstanceFamily.CarbonDioxide => OilFamilies.PolyolEster | OilFamilies.PolyalkyleneGlycol,
        _ => Designation is "R-134a" or "R-1234yf" ? OilFamilies.PolyolEster | OilFamilies.PolyalkyleneGlycol : OilFamilies.PolyolEster,
    };

    public static PureFacts? Find(string designation) => All.FirstOrDefault(row => row.Designation == designation);

    public SourcedFigure? Gwp(AssessmentReport report)
    {
        string cell = _gwp[(int)report - (int)AssessmentReport.Fourth];
        return cell.Length == 0 ? null : Figure(cell, GwpSource, _gwpEvidence);
    }

    private static SourcedFigure? Depletion(SubstanceFamily family, string cell)
    {
        if (cell.Length == 0)
        {
            return null;
        }

        return cell == "0" ? new SourcedFigure(0, false, "no chlorine and no bromine in the molecule", Evidence.Computed)
            : family == SubstanceFamily.Cfc ? Figure(cell, "40 CFR 82 Subpart A Appendix A (regulatory)", Evidence.Read)
            : family == SubstanceFamily.Hcfc ? Figure(cell, "40 CFR 82 Subpart A Appendix B (regulatory)", Evidence.FromMemory)
            : Figure(cell, "scientific, not regulatory", Evidence.FromMemory);
    }

    private static SourcedFigure Figure(string cell, string source, Evidence evidence)
    {
        bool bound = cell.StartsWith("<", StringComparison.Ordinal);
        return new SourcedFigure(double.Parse(cell.TrimStart('<'), CultureInfo.InvariantCulture), bound, source, evidence);
    }
}
