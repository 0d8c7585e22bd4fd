namespace Refrigerant.Recovery.Rules;

/// <summary>The IPCC report whose global warming potentials (over 100 years) are used. Laws name theirs; sheets often do not.</summary>
public enum AssessmentReport
{
    /// <summary>Fourth assessment report, 2007: the basis of the U.S. AIM Act and of EU 517/2014.</summary>
    Fourth = 4,

    /// <summary>Fifth assessment report, 2013.</summary>
    Fifth,

    /// <summary>Sixth assessment report, 2021.</summary>
    Sixth,
}
