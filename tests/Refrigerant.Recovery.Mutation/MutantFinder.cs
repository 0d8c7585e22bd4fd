using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Refrigerant.Recovery.Mutation;

/// <summary>
/// All changes of a file: comparisons turned round, arithmetic operators swapped, conditions negated, and for or, constants a tenth higher,
/// statements left out. Texts, what is thrown, attributes and ToString are left alone.
/// </summary>
internal sealed class MutantFinder : CSharpSyntaxWalker
{
    private static readonly Dictionary<SyntaxKind, (SyntaxKind Node, SyntaxKind Token)> Swaps = new()
    {
        [SyntaxKind.LessThanExpression] = (SyntaxKind.GreaterThanOrEqualExpression, SyntaxKind.GreaterThanEqualsToken),
        [SyntaxKind.LessThanOrEqualExpression] = (SyntaxKind.GreaterThanExpression, SyntaxKind.GreaterThanToken),
        [SyntaxKind.GreaterThanExpression] = (SyntaxKind.LessThanOrEqualExpression, SyntaxKind.LessThanEqualsToken),
        [SyntaxKind.GreaterThanOrEqualExpression] = (SyntaxKind.LessThanExpression, SyntaxKind.LessThanToken),
        [SyntaxKind.EqualsExpression] = (SyntaxKind.NotEqualsExpression, SyntaxKind.ExclamationEqualsToken),
        [SyntaxKind.NotEqualsExpression] = (SyntaxKind.EqualsExpression, SyntaxKind.EqualsEqualsToken),
        [SyntaxKind.LogicalAndExpression] = (SyntaxKind.LogicalOrExpression, SyntaxKind.BarBarToken),
        [SyntaxKind.LogicalOrExpression] = (SyntaxKind.LogicalAndExpression, SyntaxKind.AmpersandAmpersandToken),
        [SyntaxKind.AddExpression] = (SyntaxKind.SubtractExpression, SyntaxKind.MinusToken),
        [SyntaxKind.SubtractExpression] = (SyntaxKind.AddExpression, SyntaxKind.PlusToken),
        [SyntaxKind.MultiplyExpression] = (SyntaxKind.DivideExpression, SyntaxKind.SlashToken),
        [SyntaxKind.DivideExpression] = (SyntaxKind.MultiplyExpression, SyntaxKind.AsteriskToken),
        [SyntaxKind.AddAssignmentExpression] = (SyntaxKind.SubtractAssignmentExpression, SyntaxKind.MinusEqualsToken),
        [SyntaxKind.SubtractAssignmentExpression] = (SyntaxKind.AddAssignmentExpression, SyntaxKind.PlusEqualsToken),
        [SyntaxKind.MultiplyAssignmentExpression] = (SyntaxKind.DivideAssignmentExpression, SyntaxKind.SlashEqualsToken),
    };

    public List<Mutant> Found { get; } = [];

    public override void Visit(SyntaxNode? node)
    {
        if (node is null or AttributeListSyntax or InterpolatedStringExpressionSyntax or EnumMemberDeclarationSyntax or PatternSyntax or SwitchLabelSyntax
            or ThrowStatementSyntax or ThrowExpressionSyntax or ParameterSyntax { Default: not null }
            or MethodDeclarationSyntax { Identifier.ValueText: "ToString" or "GetHashCode" })
        {
            return;
        }

        Look(node);
        base.Visit(node);
    }

    private void Look(SyntaxNode node)
    {
        switch (node)
        {
            case BinaryExpressionSyntax binary when Swaps.TryGetValue(binary.Kind(), out (SyntaxKind Node, SyntaxKind Token) swap) && !IsText(binary):
                Add("operator", node, n =>
                {
                    var b = (BinaryExpressionSyntax)n;
                    return SyntaxFactory.BinaryExpression(swap.Node, b.Left, SyntaxFactory.Token(swap.Token).WithTriviaFrom(b.OperatorToken), b.Right);
                });
                break;
            case AssignmentExpressionSyntax assignment when Swaps.TryGetValue(assignment.Kind(), out (SyntaxKind Node, SyntaxKind Token) swap):
                Add("operator", node, n =>
                {
                    var a = (AssignmentExpressionSyntax)n;
                    return SyntaxFactory.AssignmentExpression(swap.Node, a.Left, SyntaxFactory.Token(swap.Token).WithTriviaFrom(a.OperatorToken), a.Right);
                });
                break;
            case LiteralExpressionSyntax { Token.Value: double or int } literal:
                Add("constant", node, _ => Higher(literal.Token.Value!));
                break;
            case LiteralExpressionSyntax literal when literal.Kind() is SyntaxKind.TrueLiteralExpression or SyntaxKind.FalseLiteralExpression:
                Add("truth", node, _ => SyntaxFactory.LiteralExpression(
                    literal.Kind() == SyntaxKind.TrueLiteralExpression ? SyntaxKind.FalseLiteralExpression : SyntaxKind.TrueLiteralExpression));
                break;
            case PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.LogicalNotExpression }:
                Add("negation", node, n => ((PrefixUnaryExpressionSyntax)n).Operand);
                break;
            case IfStatementSyntax { Condition: var condition }:
                Negate(condition);
                break;
            case ConditionalExpressionSyntax { Condition: var condition }:
                Negate(condition);
                break;
            case ExpressionStatementSyntax { Expression: InvocationExpressionSyntax or AssignmentExpressionSyntax or PostfixUnaryExpressionSyntax }:
                Add("statement", node, null);
                break;
        }
    }

    /// <summary>Conditions that are not negated by another change.</summary>
    private void Negate(ExpressionSyntax condition)
    {
        if (condition is not (BinaryExpressionSyntax or PrefixUnaryExpressionSyntax))
        {
            Add("negation", condition, n => SyntaxFactory.PrefixUnaryExpression(SyntaxKind.LogicalNotExpression, SyntaxFactory.ParenthesizedExpression((ExpressionSyntax)n.WithoutTrivia())));
        }
    }

    private void Add(string kind, SyntaxNode node, Func<SyntaxNode, SyntaxNode>? change)
    {
        // A copy of what declares a variable would declare it twice, and a directive has its line to itself.
        if (!node.ContainsDirectives && (change is null || !node.DescendantNodes().Any(n => n is VariableDesignationSyntax or LambdaExpressionSyntax)))
        {
            Found.Add(new Mutant(kind, node, change));
        }
    }

    private static bool IsText(BinaryExpressionSyntax sum) =>
        sum.IsKind(SyntaxKind.AddExpression) && sum.DescendantNodes().Any(n => n is InterpolatedStringExpressionSyntax || n.IsKind(SyntaxKind.StringLiteralExpression));

    private static LiteralExpressionSyntax Higher(object value)
    {
        SyntaxToken token = value switch
        {
            int whole => SyntaxFactory.Literal(whole + Math.Max(1, whole / 10)),
            double number => SyntaxFactory.Literal((number == 0 ? 0.1 : 1.1 * number).ToString("R", CultureInfo.InvariantCulture) + "d", number == 0 ? 0.1 : 1.1 * number),
            _ => throw new ArgumentException($"{value} is no number.", nameof(value)),
        };
        return SyntaxFactory.LiteralExpression(SyntaxKind.NumericLiteralExpression, token);
    }
}
