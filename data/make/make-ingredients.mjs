// Makes data/ingredients.csv from USDA SR28 (a work of the US Government) with our own short names and allergen marks.
// Run from the repository root after `npm run build`:  node data/make/make-ingredients.mjs
//
// One food a line:  id | our name | SR28 number | US allergens | EU allergens
// An allergen ends in ? when it depends on the maker; the species stands in brackets where labels must name it.
// The marks are our reading of the food's name: a reminder to check the label, not a declaration.
import { renameSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { INGREDIENT_COLUMNS, parseIngredients } from "slabwright/food";
import { loadFoods } from "slabwright/notebook";

const CHOSEN = `
turkey-ground-93 | ground turkey 93 % lean, raw | 05665 | |
turkey-ground-85 | ground turkey 85 % lean, raw | 05668 | |
turkey-breast | turkey breast meat, raw | 05219 | |
chicken-ground | ground chicken, raw | 05332 | |
chicken-breast | chicken breast, skinless, raw | 05062 | |
chicken-thigh | chicken thigh meat, raw | 05096 | |
beef-ground-80 | ground beef 80/20, raw | 23572 | |
beef-ground-85 | ground beef 85/15, raw | 23567 | |
beef-ground-90 | ground beef 90/10, raw | 23562 | |
pork-ground | ground pork, raw | 10219 | |
lamb-ground | ground lamb, raw | 17224 | |
bacon | bacon, raw | 10123 | |
ham-sliced | ham, sliced, water added | 07028 | milk?; soy? | milk?; soy?
pollock-alaska | Alaska pollock, raw | 15066 | fish (Alaska pollock) | fish
cod-atlantic | Atlantic cod, raw | 15015 | fish (cod) | fish
haddock | haddock, raw | 15033 | fish (haddock) | fish
whiting | whiting, raw | 15132 | fish (whiting) | fish
tilapia | tilapia, raw | 15261 | fish (tilapia) | fish
salmon-farmed | Atlantic salmon, farmed, raw | 15236 | fish (salmon) | fish
salmon-pink-canned | pink salmon, canned, whole can | 15084 | fish (salmon) | fish
tuna-canned-water | light tuna in water, drained | 15121 | fish (tuna) | fish
surimi | surimi | 15109 | fish (check species); egg? | fish; egg?
shrimp | shrimp, raw | 15270 | crustacean (shrimp) | crustacean; sulphite?
crab-canned | blue crab, canned | 15141 | crustacean (crab) | crustacean; sulphite?
squid | squid, raw | 15175 | | mollusc
egg-whole | whole egg, raw | 01123 | egg | egg
egg-white | egg white, raw | 01124 | egg | egg
egg-yolk | egg yolk, raw | 01125 | egg | egg
egg-whole-dried | whole egg, dried | 01133 | egg | egg
egg-white-dried | egg white, dried | 01173 | egg | egg
milk-whole | whole milk | 01077 | milk | milk
milk-skim | skim milk | 01085 | milk | milk
milk-dry-nonfat | nonfat dry milk | 01091 | milk | milk
buttermilk | cultured buttermilk, low fat | 01088 | milk | milk
buttermilk-dried | buttermilk powder | 01094 | milk | milk
yogurt-plain | plain yogurt, whole milk | 01116 | milk | milk
yogurt-greek | Greek yogurt, plain, nonfat | 01256 | milk | milk
sour-cream | sour cream | 01056 | milk | milk
cream-heavy | heavy whipping cream | 01053 | milk | milk
butter | butter, unsalted | 01145 | milk | milk
butter-salted | butter, salted | 01001 | milk | milk
cheddar | cheddar | 01009 | milk | milk
mozzarella-part-skim | mozzarella, low moisture, part skim | 01029 | milk | milk
parmesan-grated | hard grating cheese, grated (parmesan) | 01032 | milk | milk; egg?
romano | hard grating cheese (romano) | 01038 | milk | milk; egg?
feta | feta | 01019 | milk | milk
ricotta | ricotta, whole milk | 01036 | milk | milk
cottage-cheese | cottage cheese, creamed | 01012 | milk | milk
cream-cheese | cream cheese | 01017 | milk | milk
goat-cheese-soft | goat cheese, soft | 01159 | milk | milk
whey-sweet-dried | sweet whey powder | 01115 | milk | milk
tofu-firm | firm tofu | 16426 | soy | soy
tempeh | tempeh | 16114 | soy | soy; gluten?
edamame-frozen | edamame, frozen | 11211 | soy | soy
soy-flour-defatted | defatted soy flour | 16117 | soy | soy
soy-concentrate | soy protein concentrate | 16121 | soy | soy
soy-isolate | soy protein isolate | 16122 | soy | soy
wheat-gluten | vital wheat gluten | 48052 | wheat | gluten (wheat)
lentils-red-dry | red lentils, dry | 16144 | |
lentils-dry | lentils, dry | 16069 | |
lentils-cooked | lentils, boiled, drained | 16070 | |
chickpeas-dry | chickpeas, dry | 16056 | |
chickpeas-cooked | chickpeas, boiled, drained | 16057 | |
chickpeas-canned | chickpeas, canned, drained | 16358 | |
chickpea-flour | chickpea flour | 16157 | |
hummus | hummus | 16158 | sesame | sesame
black-beans-dry | black beans, dry | 16014 | |
black-beans-cooked | black beans, boiled, drained | 16015 | |
kidney-beans-cooked | kidney beans, boiled, drained | 16028 | |
white-beans-cooked | white beans, boiled, drained | 16050 | |
pinto-beans-cooked | pinto beans, boiled, drained | 16043 | |
split-peas-dry | green split peas, dry | 16085 | |
split-peas-cooked | green split peas, boiled | 16086 | |
lupin-cooked | lupins, boiled, drained | 16077 | | lupin
peas-frozen | green peas, frozen | 11312 | |
corn-frozen | sweetcorn kernels, frozen | 11178 | |
corn-canned | sweetcorn, canned, drained | 11172 | |
beets-raw | beets, raw | 11080 | |
beets-cooked | beets, boiled, drained | 11081 | |
carrots-raw | carrots, raw | 11124 | |
carrots-cooked | carrots, boiled, drained | 11125 | |
celery | celery, raw | 11143 | | celery
celeriac | celeriac, raw | 11141 | | celery
onion | onion, raw | 11282 | |
onion-flakes | dehydrated onion flakes | 11284 | | sulphite?
scallion | scallion, raw | 11291 | |
leek | leek, raw | 11246 | |
garlic | garlic, raw | 11215 | |
ginger-root | ginger root, raw | 11216 | |
pepper-red | red sweet pepper, raw | 11821 | |
pepper-green | green sweet pepper, raw | 11333 | |
jalapeno | jalapeño, raw | 11979 | |
spinach-raw | spinach, raw | 11457 | |
spinach-frozen | spinach, frozen | 11463 | |
kale | kale, raw | 11233 | |
cabbage | cabbage, raw | 11109 | |
cauliflower | cauliflower, raw | 11135 | |
cauliflower-frozen | cauliflower, frozen | 11137 | |
broccoli | broccoli, raw | 11090 | |
broccoli-frozen | broccoli, frozen, chopped | 11092 | |
zucchini | zucchini, raw | 11477 | |
butternut | butternut squash, raw | 11485 | |
pumpkin-canned | pumpkin, canned | 11424 | |
parsnip | parsnip, raw | 11298 | |
eggplant | eggplant, raw | 11209 | |
mushrooms-white | white mushrooms, raw | 11260 | |
mushrooms-brown | brown mushrooms, raw | 11266 | |
tomato-paste | tomato paste | 11546 | |
tomatoes-dried | sun-dried tomatoes | 11955 | | sulphite?
potato-raw | potato, flesh and skin, raw | 11352 | |
potato-boiled | potato, boiled without skin | 11367 | |
potato-flakes | potato flakes, dry | 11378 | | sulphite?
potato-flour | potato flour | 11413 | | sulphite?
hash-brown-frozen | shredded potato, frozen | 11390 | | sulphite?
sweet-potato-raw | sweet potato, raw | 11507 | |
sweet-potato-baked | sweet potato, baked, flesh | 11508 | |
flour-all-purpose | all-purpose wheat flour | 20081 | wheat | gluten (wheat)
flour-bread | bread flour | 20083 | wheat | gluten (wheat)
flour-cake | cake flour | 20084 | wheat | gluten (wheat)
flour-whole-wheat | whole-wheat flour | 20080 | wheat | gluten (wheat)
semolina | semolina | 20066 | wheat | gluten (wheat)
rice-flour | white rice flour | 20061 | |
rice-flour-brown | brown rice flour | 20090 | |
corn-masa-flour | instant corn masa flour | 20017 | |
corn-flour | whole-grain corn flour | 20016 | |
cornmeal | whole-grain cornmeal | 20020 | |
cornmeal-degermed | degermed cornmeal | 20022 | |
cornstarch | cornstarch | 20027 | |
arrowroot | arrowroot flour | 20003 | |
tapioca-pearl | tapioca pearl, dry | 20068 | |
oats-rolled | rolled oats, dry | 08120 | wheat? | gluten (oats)
oat-bran | oat bran, raw | 20033 | wheat? | gluten (oats)
oat-flour | oat flour | 20132 | wheat? | gluten (oats)
buckwheat-flour | buckwheat flour | 20011 | |
millet-flour | millet flour | 20647 | |
sorghum-flour | whole-grain sorghum flour | 20648 | |
rye-flour | medium rye flour | 20064 | | gluten (rye)
barley-flour | barley flour | 20130 | | gluten (barley)
rice-white-dry | long-grain white rice, dry | 20044 | |
rice-white-cooked | long-grain white rice, cooked | 20045 | |
rice-brown-cooked | long-grain brown rice, cooked | 20037 | |
quinoa-dry | quinoa, dry | 20035 | |
quinoa-cooked | quinoa, cooked | 20137 | |
bulgur-dry | bulgur, dry | 20012 | wheat | gluten (wheat)
bulgur-cooked | bulgur, cooked | 20013 | wheat | gluten (wheat)
couscous-dry | couscous, dry | 20028 | wheat | gluten (wheat)
couscous-cooked | couscous, cooked | 20029 | wheat | gluten (wheat)
millet-cooked | millet, cooked | 20032 | |
wheat-bran | wheat bran | 20077 | wheat | gluten (wheat)
wheat-germ | wheat germ | 20078 | wheat | gluten (wheat)
crumbs-dry-plain | dry bread crumbs, plain | 18079 | wheat; milk?; soy?; sesame? | gluten (wheat); milk?; soy?; sesame?
crumbs-dry-seasoned | dry bread crumbs, seasoned | 18376 | wheat; milk?; soy?; sesame? | gluten (wheat); milk?; soy?; sesame?; celery?
bread-white | white bread, soft crumbs | 18069 | wheat; milk?; soy?; sesame? | gluten (wheat); milk?; soy?; sesame?
crackers-saltine | saltine crackers | 18228 | wheat; soy? | gluten (wheat); soy?
crackers-matzo | matzo, plain | 18217 | wheat | gluten (wheat)
melba-toast | melba toast | 18220 | wheat; sesame? | gluten (wheat); sesame?
tortilla-chips | tortilla chips, white corn, salted | 19056 | |
rice-cakes | rice cakes, brown rice | 19051 | sesame? | sesame?
pretzels | hard pretzels, salted | 19047 | wheat | gluten (wheat)
potato-chips | potato chips, salted | 19411 | |
sunflower-seeds | sunflower kernels | 12036 | |
pumpkin-seeds | pumpkin seed kernels | 12014 | |
sesame-seeds | sesame seeds | 12023 | sesame | sesame
flaxseed | flaxseed | 12220 | |
chia-seeds | chia seeds | 12006 | |
hemp-seeds | hulled hemp seed | 12012 | |
tahini | tahini | 12166 | sesame | sesame
almonds | almonds | 12061 | tree nut (almond) | nut (almond)
walnuts | walnuts | 12155 | tree nut (walnut) | nut (walnut)
cashews | cashews, raw | 12087 | tree nut (cashew) | nut (cashew)
peanut-butter | peanut butter, salted | 16098 | peanut | peanut
coconut-dried | dried coconut, unsweetened | 12108 | | sulphite?
coconut-milk | coconut milk, canned | 12118 | | sulphite?
oil-canola | canola oil | 04582 | |
oil-sunflower | sunflower oil | 04506 | |
oil-soybean | soybean oil | 04044 | soy? | soy?
oil-corn | corn oil | 04518 | |
oil-olive | olive oil | 04053 | |
oil-sesame | sesame oil | 04058 | sesame | sesame
oil-coconut | coconut oil | 04047 | |
lard | lard | 04002 | |
mayonnaise | mayonnaise | 04025 | egg; soy? | egg; mustard?; soy?
mustard-yellow | yellow mustard | 02046 | | mustard
mustard-ground | ground mustard seed | 02024 | | mustard
catsup | tomato catsup | 11935 | | celery?
soy-sauce | soy sauce (soy and wheat) | 16123 | soy; wheat | soy; gluten (wheat)
tamari | tamari | 16124 | soy; wheat? | soy; gluten?
miso | miso | 16112 | soy; wheat? | soy; gluten?
hot-sauce | hot pepper sauce | 06168 | |
vinegar-distilled | distilled vinegar | 02053 | |
vinegar-cider | cider vinegar | 02048 | | sulphite?
lemon-juice | lemon juice | 09152 | |
lemon-peel | lemon peel | 09156 | |
salt-fine | fine salt | 02047 | |
sugar | granulated sugar | 19335 | |
sugar-brown | brown sugar | 19334 | |
honey | honey | 19296 | |
maple-syrup | maple syrup | 19353 | |
gelatin | unsweetened gelatin powder | 19177 | |
baking-powder | baking powder, double acting | 18369 | |
baking-soda | baking soda | 18372 | |
yeast-dry | active dry yeast | 18375 | |
water | water, tap | 14411 | |
pepper-black | black pepper, ground | 02030 | |
pepper-white | white pepper, ground | 02032 | |
cayenne | cayenne pepper | 02031 | |
paprika | paprika | 02028 | |
chili-powder | chili powder | 02009 | |
cumin | cumin seed | 02014 | |
coriander-seed | coriander seed | 02013 | |
turmeric | turmeric, ground | 02043 | |
curry-powder | curry powder | 02015 | | mustard?; celery?
garlic-powder | garlic powder | 02020 | |
onion-powder | onion powder | 02026 | |
oregano | dried oregano | 02027 | |
thyme | dried thyme | 02042 | |
sage | ground sage | 02038 | |
rosemary | dried rosemary | 02036 | |
dill-dried | dried dill weed | 02017 | |
dill-fresh | fresh dill | 02045 | |
parsley-fresh | fresh parsley | 11297 | |
cilantro | fresh cilantro | 11165 | |
basil-fresh | fresh basil | 02044 | |
chives | fresh chives | 11156 | |
celery-seed | celery seed | 02007 | | celery
nutmeg | nutmeg, ground | 02025 | |
raisins | raisins | 09298 | | sulphite?
cranberries | cranberries, raw | 09078 | |
apple | apple with skin, raw | 09003 | |
`;

const byNumber = new Map(loadFoods().map((food) => [food.ndb, food]));
const quote = (cell) => (/[",\n#]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
const number = (value) => (value === null || value === undefined ? "" : String(value));

const rows = CHOSEN.trim()
  .split("\n")
  .map((line) => {
    const [id, name, ndb, us, eu] = line.split("|").map((cell) => cell.trim());
    const food = byNumber.get(ndb);
    if (!food) throw new Error(`${id}: no food ${ndb} in SR28`);
    const n = food.per100G;
    const [first, second] = food.householdWeights;
    const f = food.energyFactors;
    return [
      id,
      name,
      ndb,
      ...[n.waterG, n.energyKcal, n.proteinG, n.fatG, n.saturatedFatG, n.carbohydrateG, n.fibreG, n.sugarsG].map(
        number,
      ),
      ...[n.sodiumMg, n.cholesterolMg, n.ashG].map(number),
      first?.measure ?? "",
      number(first?.massG),
      second?.measure ?? "",
      number(second?.massG),
      first ? first.source : "",
      ...[f?.proteinKcalG, f?.fatKcalG, f?.carbohydrateKcalG].map(number),
      us,
      eu,
      "",
      `USDA SR28 (2015), food ${ndb}: ${food.description}`,
    ].map(quote);
  });

const file = fileURLToPath(new URL("../ingredients.csv", import.meta.url));
const text = `${[INGREDIENT_COLUMNS, ...rows].map((row) => row.join(",")).join("\n")}\n`;
parseIngredients(text, "ingredients.csv");
writeFileSync(`${file}.part`, text);
renameSync(`${file}.part`, file);
console.log(`${rows.length} ingredients written to data/ingredients.csv`);
