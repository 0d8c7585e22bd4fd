using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>Time that handling takes.</summary>
internal sealed record TimesDocument
{
    public double? HoseChangeMinutes { get; init; }

    public double? CylinderChangeMinutes { get; init; }

    public double? CloseMinutes { get; init; }

    public double? HoldMinutes { get; init; }

    public static TimesDocument From(JobTimes times) => new()
    {
        HoseChangeMinutes = Plain.Minutes(times.HoseChange),
        CylinderChangeMinutes = Plain.Minutes(times.CylinderChange),
        CloseMinutes = Plain.Minutes(times.Close),
        HoldMinutes = Plain.Minutes(times.Hold),
    };

    public JobTimes ToTimes(DocumentNode node) => node.Build(() =>
    {
        JobTimes times = new();
        return times with
        {
            HoseChange = HoseChangeMinutes is double hose ? Plain.DurationOf(hose) : times.HoseChange,
            CylinderChange = CylinderChangeMinutes is double cylinder ? Plain.DurationOf(cylinder) : times.CylinderChange,
            Close = CloseMinutes is double close ? Plain.DurationOf(close) : times.Close,
            Hold = HoldMinutes is double hold ? Plain.DurationOf(hold) : times.Hold,
        };
    });
}
