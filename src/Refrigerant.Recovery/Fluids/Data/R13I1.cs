using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-13I1, trifluoroiodomethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R13I1
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-13I1",
        Name = "trifluoroiodomethane",
        CasNumber = "2314-97-8",
        Source = "Eric W. Lemmon and Roland Span, (2016, submitted), Thermodynamic Properties of R-227ea, R-365mfc, "
            + "R-115, and R13I1, J. Chem. Eng. Data, doi:10.1021/acs.jced.5b00684",
        MolarMass = 0.1959104,
        GasConstant = 8.3144621,
        ReducingTemperature = 396.44,
        ReducingMolarDensity = 4430.6,
        CriticalTemperature = 396.44,
        CriticalPressure = 3952566.071718672,
        CriticalMolarDensity = 4430.6,
        AcentricFactor = 0.17618111777018552,
        MinimumTemperature = 120,
        MaximumTemperature = 420,
        MaximumPressure = 50000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 6.2641, 1.7505801634547473 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.12191, 1, 0.25, 0 },
                { -3.08087, 1, 1.125, 0 },
                { 1.11307, 1, 1.5, 0 },
                { -0.184885, 2, 1.375, 0 },
                { 0.110971, 3, 0.25, 0 },
                { 0.000325, 7, 0.875, 0 },
                { 0.333357, 2, 0.625, 1 },
                { -0.0288288, 5, 1.75, 1 },
                { -0.371554, 1, 3.625, 2 },
                { -0.0997985, 4, 3.625, 2 },
                { -0.0333205, 3, 14.5, 3 },
                { 0.0207882, 4, 12, 3 },
            },
        },
    };
}
