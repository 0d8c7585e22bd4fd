using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-114, 1,2-dichloro-1,1,2,2-tetrafluoroethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R114
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-114",
        Name = "1,2-dichloro-1,1,2,2-tetrafluoroethane",
        CasNumber = "76-14-2",
        Source = "B. Platzer and A. Polt and G. Maurer, (1990), Thermophysical Properties of Refrigerants, "
            + "Springer-Verlag, doi:10.1007/978-3-662-02608-3",
        MolarMass = 0.170921,
        GasConstant = 8.31451,
        ReducingTemperature = 418.83,
        ReducingMolarDensity = 3393.2,
        CriticalTemperature = 418.83,
        CriticalPressure = 3257000,
        CriticalMolarDensity = 3393.2000000000007,
        AcentricFactor = 0.2523,
        MinimumTemperature = 180.63,
        MaximumTemperature = 507,
        MaximumPressure = 21000000,
        IdealGas = new IdealHelmholtz(
            logTau: 1.0074149313645662,
            tauLogTau: 0,
            powers: new double[,]
            {
                { -13.951694432055056, -1 },
                { 3.543183977793783, -2 },
                { -0.8480418696132922, -3 },
                { 0.11216650976820333, -4 },
            },
            planckEinstein: new double[0, 2]),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.07938940032879, 1, 0, 0 },
                { -1.99243731009857, 1, 1, 0 },
                { -0.155135220175231, 1, 2, 0 },
                { -0.121465858429101, 1, 3, 0 },
                { -0.0165038674558161, 1, 4, 0 },
                { -0.186916017480622, 2, 0, 0 },
                { 0.308074956770949, 2, 1, 0 },
                { 0.115861545567346, 2, 2, 0 },
                { 0.027635877981389, 3, 0, 0 },
                { 0.108043424159349, 3, 1, 0 },
                { 0.0460684822539207, 4, 0, 0 },
                { -0.174822007470687, 4, 1, 0 },
                { 0.0317531741331376, 5, 1, 0 },
                { -0.340776521025164, 0, 3, 0 },
                { 0.323001398918284, 0, 4, 0 },
                { -0.0424950543505197, 0, 5, 0 },
            },
            Exponential = new double[,]
            {
                { -1.66940287525002, 2, 3, 1.21104, 2 },
                { 4.08693538568874, 2, 4, 1.21104, 2 },
                { -2.4173923391137, 2, 5, 1.21104, 2 },
                { 0.340776521025164, 0, 3, 1.21104, 2 },
                { -0.323001398918284, 0, 4, 1.21104, 2 },
                { 0.0424950543505197, 0, 5, 1.21104, 2 },
            },
        },
    };
}
